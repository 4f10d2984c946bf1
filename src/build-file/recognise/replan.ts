import { faultAt } from "../../errors.ts";
import { parseLongForm } from "../build-file.ts";
import { draftOf, expandBuild } from "../expand.ts";
import { LugTable } from "../lugs.ts";
import type { Draft } from "../plans/draft.ts";
import { type PlanInput, planSchema } from "../plans/plan-schema.ts";
import { type BuildInput, longFormSchema } from "../schema.ts";
import type { Edit } from "./edits.ts";
import { fitOnto } from "./fit.ts";
import { type Guard, guardOf, netAt } from "./guard.ts";
import { keptTurns } from "./kept-turns.ts";
import { mergedPart } from "./merged-part.ts";
import { lugAfter, type Move, moveOf } from "./move.ts";
import type { Recognised } from "./recognise.ts";
import { rewired } from "./rewired.ts";
import { same } from "./same.ts";

export interface Replanned {
  readonly source: BuildInput;
  /** Edits that hold on the new guard too. */
  readonly kept: readonly Edit[];
  /** Edits that the new plan leaves no room for. */
  readonly dropped: readonly Edit[];
}

function partsAfter({ guard, old, next, inOld, names, given, extras }: Move): BuildInput["parts"] {
  const written = guard.written.parts;
  const ofPlan = [...Object.entries(next.parts)].flatMap(([planName, part]) => {
    const name = given.get(planName);
    if (name === undefined) return [];
    const was = names.get(inOld.get(planName) ?? "");
    const now = was === undefined ? part : mergedPart(written[was]!, old.parts[inOld.get(planName)!]!, part);
    return [[name, now] as const];
  });
  return Object.fromEntries([...ofPlan, ...extras.map((name) => [name, written[name]!] as const)]);
}

function holds(move: Move, after: Guard, edit: Edit): boolean {
  if (!("between" in edit)) {
    if (edit.kind === "part-left-out") return true;
    if (edit.kind === "part-added") return move.extras.includes(edit.part);
    const name = move.renamed.get(edit.part);
    const [was, now] = [move.guard.written.parts[edit.part], name && after.written.parts[name]] as Record<
      string,
      unknown
    >[];
    return was !== undefined && now !== undefined && same(was[edit.field], now[edit.field]);
  }
  const nets = edit.between.map((lug) => netAt(after, lugAfter(move, lug) ?? ""));
  if (nets.includes(-1)) return false;
  return (nets[0] === nets[1]) === (edit.kind === "wire-laid");
}

function drawnFrom(plan: PlanInput, guard: Guard): Draft {
  return draftOf(planSchema.parse(plan), guard.build.strings.scale);
}

/**
 * A guard after its plan is changed. What the two plans have in common stays as the person has it: names, labels, places, what was
 * measured, the way the wires run, and what was done by hand beyond the plan.
 * @param source the guard's long form
 * @param from what `recognise` says of it
 * @throws PresolderError BUILD_INVALID where the guard cannot be read or the new plan cannot be wired
 */
export function replan(source: BuildInput, from: Recognised, to: PlanInput): Replanned {
  const guard = guardOf(source);
  if (typeof guard === "string") throw faultAt("BUILD_INVALID", "build", guard);
  expandBuild({ presolder: 1, plan: to, ...(source.strings ? { strings: source.strings } : {}) });
  const names = new Map(Object.entries(from.names).filter(([, name]) => name in source.parts));
  const old = drawnFrom(from.plan, guard);
  const move = moveOf(guard, old, names, drawnFrom(to, guard));
  const fit = fitOnto(guard, old, names);
  const parts = partsAfter(move);
  const table = new LugTable(longFormSchema.shape.parts.parse(parts));
  const wires = rewired(move, fit, keptTurns(guard, fit, move, names), table);
  const long: BuildInput = { ...source, parts, wires };
  parseLongForm(long);
  const after = guardOf(long) as Guard;
  return {
    source: long,
    kept: from.edits.filter((edit) => holds(move, after, edit)),
    dropped: from.edits.filter((edit) => !holds(move, after, edit)),
  };
}
