import "./zod-without-eval.ts";
import { PlanForm, whyNot } from "../../build-file/plans/choices/plan-form.ts";
import type { PlanInput } from "../../build-file/plans/plan-schema.ts";
import type { Edit } from "../../build-file/recognise/edits.ts";
import { type Recognised, recognise } from "../../build-file/recognise/recognise.ts";
import { replan } from "../../build-file/recognise/replan.ts";
import type { BuildInput } from "../../build-file/schema.ts";
import type { PlanFieldAnswer as PlanField } from "../../contract/recognise.ts";
import type { BuildSource } from "../state/reading.ts";

export type HandEdit = Pick<Edit, "kind" | "text">;

/** A guard as a plan, with every option of it, or why it is none. */
export type PlanAnswer =
  | { readonly plan: PlanInput; readonly fields: readonly PlanField[]; readonly edits: readonly HandEdit[] }
  | { readonly plan: null; readonly why: string };

/** A guard after its plan is changed, or why it cannot be. */
export type PlanChange =
  | {
      readonly source: BuildSource;
      readonly plan: PlanInput;
      readonly dropped: readonly HandEdit[];
      /** Switches and resistors of the plan before that went with the change, or elsewhere, in words. */
      readonly besides: string;
    }
  | { readonly refusal: string };

export interface PlanStep {
  readonly source: BuildSource;
  /** The plan that is shown of it. */
  readonly plan: PlanInput;
  readonly field: string;
  readonly value: string;
}

function bare({ kind, text }: Edit): HandEdit {
  return { kind, text };
}

function recognised(source: BuildSource, hint: PlanInput | undefined) {
  return recognise(source as unknown as BuildInput, hint);
}

export function planOf(source: BuildSource, hint: PlanInput | undefined): PlanAnswer {
  const found = recognised(source, hint);
  if (found.plan === null) return found;
  return { plan: found.plan, fields: new PlanForm(found.plan).fields(), edits: found.edits.map(bare) };
}

/** What a change of one field does besides: a split goes where the new pickup has two conductors, or to another knob. */
function besides(field: string, before: PlanForm, after: PlanForm): string {
  const [was, is] = [before.extras(), after.extras()];
  const others = [...was].filter(([id]) => id !== field);
  const lost = others.flatMap(([id, words]) => (is.has(id) ? [] : [words]));
  const moved = others.flatMap(([id, words]) => (is.has(id) && is.get(id) !== words ? [is.get(id)!] : []));
  const told = (words: string, which: readonly string[]) => (which.length > 0 ? [`${words} ${which.join(", ")}`] : []);
  return [...told("no longer there:", lost), ...told("now", moved)].join("; ");
}

/** The wires of a guard that a plan makes, with what was done by hand as far as it has a place there. */
export function changedPlan({ source, plan, field, value }: PlanStep): PlanChange {
  const found = recognised(source, plan);
  if (found.plan === null) return { refusal: found.why };
  const form = new PlanForm(found.plan);
  const next = form.choose(field, value);
  const refusal = whyNot(next);
  if (refusal !== undefined) return { refusal };
  const { source: long, dropped } = replan(source as unknown as BuildInput, found as Recognised, next);
  const told = besides(field, form, new PlanForm(next));
  return { source: long as unknown as BuildSource, plan: next, dropped: dropped.map(bare), besides: told };
}
