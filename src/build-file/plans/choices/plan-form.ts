import { PresolderError } from "../../../errors.ts";
import { DEFAULT_SCALE_METRES } from "../../../lengths.ts";
import { draftOf, expandBuild } from "../../expand.ts";
import { parseOrThrow } from "../../zod-tools.ts";
import { type Plan, type PlanInput, planSchema } from "../plan-schema.ts";
import { NONE, type PlanChoice, type PlanControl, type PlanField } from "./field.ts";
import { bleedFields, groundFields, layoutField, resistorFields, volumeOrderField } from "./other-fields.ts";
import { pickupFields } from "./pickup-fields.ts";
import { switchedFields } from "./switched/switched-fields.ts";
import { toneFields } from "./tones/tone-fields.ts";
import { volumeFields } from "./volume-fields.ts";

function refusalOf(wire: () => unknown): string | undefined {
  try {
    wire();
    return undefined;
  } catch (error) {
    if (!(error instanceof PresolderError)) throw error;
    return error.faults[0]?.message ?? error.message;
  }
}

/** Why a plan cannot be read or wired, in the words of its refusal; undefined where it can. */
export function whyNot(plan: PlanInput): string | undefined {
  return refusalOf(() => expandBuild({ presolder: 1, plan }));
}

function judged<Choice extends PlanChoice>(
  choices: readonly Choice[],
  isNow: (choice: Choice) => boolean,
  made: (value: string) => Plan,
) {
  return choices.map((choice): Choice => {
    if (choice.reason !== undefined || isNow(choice)) return choice;
    // What is offered can be read; only whether it can be wired is open.
    const reason = refusalOf(() => draftOf(made(choice.value), DEFAULT_SCALE_METRES));
    return reason === undefined ? choice : { ...choice, reason };
  });
}

function fieldOf(control: PlanControl): PlanField {
  const { made, ...field } = control;
  switch (field.kind) {
    case "quantity":
      return field;
    case "choice":
      return { ...field, choices: judged(field.choices, ({ value }) => value === field.value, made) };
    case "ticks":
      return { ...field, ticks: judged(field.ticks, () => false, made) };
  }
}

function controlsOf(plan: Plan): PlanControl[] {
  return [
    layoutField(plan),
    ...pickupFields(plan),
    ...volumeFields(plan),
    ...volumeOrderField(plan),
    ...bleedFields(plan),
    ...toneFields(plan),
    ...switchedFields(plan),
    ...resistorFields(plan),
    ...groundFields(plan),
  ];
}

/** A plan as a form: every option with what it is set to, what else it may be, and why not where it may not. */
export class PlanForm {
  readonly #controls: readonly PlanControl[];

  /** @throws PresolderError BUILD_INVALID where it is no plan */
  constructor(plan: PlanInput) {
    this.#controls = controlsOf(parseOrThrow(planSchema, plan, "BUILD_INVALID", ["build", "plan"]));
  }

  fields(): PlanField[] {
    return this.#controls.map(fieldOf);
  }

  /** The switches that the plan has beside the main one, and resistors across something, in words, by their fields. */
  extras(): ReadonlyMap<string, string> {
    const told = this.#controls.flatMap((control): [string, string][] => {
      if (control.kind !== "choice" || control.value === NONE) return [];
      if (!control.choices.some(({ value }) => value === NONE)) return [];
      const now = control.choices.find(({ value }) => value === control.value);
      return [[control.id, `${control.title}: ${now?.label ?? control.value}`]];
    });
    return new Map(told);
  }

  /** The plan after a field is set to a value; of ticks, after the one of that value is turned over. */
  choose(id: string, value: string): PlanInput {
    const control = this.#controls.find((each) => each.id === id);
    if (!control) throw new RangeError(`the plan has no field ${id}`);
    return control.made(value) as PlanInput;
  }
}
