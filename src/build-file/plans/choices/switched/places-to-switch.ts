import type { Plan, Where } from "../../plan-schema.ts";
import { NONE, nothing, type PlanChoice, type PlanControl } from "../field.ts";
import { potsOf } from "../pots.ts";

type By = Where | { readonly position: number };

export function keyOf(by: By | undefined): string {
  if (by === undefined) return NONE;
  if (typeof by === "string") return `pot ${by}`;
  return "switch" in by ? `switch ${by.switch}` : `position ${by.position}`;
}

/** What a choice of `placesToSwitch` stands for. */
export function byOf(key: string): By | undefined {
  const [sort, name] = key.split(" ");
  if (sort === "pot") return name!;
  if (sort === "switch") return { switch: name! };
  return sort === "position" ? { position: Number(name) } : undefined;
}

/** Every pot's push-pull, a switch of its own, and what it is worked from now. */
export function placesToSwitch(plan: Plan, by: By | undefined, ownSwitch: string): PlanChoice[] {
  const pots = potsOf(plan).map(({ name, words }) => ({ value: keyOf(name), label: `push-pull on the ${words}` }));
  const own = { value: keyOf({ switch: ownSwitch }), label: "a small switch of its own" };
  const isOther = typeof by === "object" && "switch" in by && by.switch !== ownSwitch;
  const other = isOther ? [{ value: keyOf(by), label: `the small switch “${by.switch}”` }] : [];
  return [nothing, ...pots, own, ...other];
}

interface Switched {
  readonly id: string;
  readonly option: string;
  readonly title: string;
  /** What it is worked from now. */
  readonly by: Where | undefined;
  /** What a switch of its own would be called. */
  readonly ownSwitch: string;
}

/** An option that is worked from a push-pull or a switch of its own, or not there. */
export function switchedField(
  plan: Plan,
  { by, ownSwitch, ...named }: Switched,
  made: (by: Where | undefined) => Plan,
): PlanControl {
  return {
    ...named,
    kind: "choice",
    value: keyOf(by),
    choices: placesToSwitch(plan, by, ownSwitch),
    made: (value) => made(byOf(value) as Where | undefined),
  };
}
