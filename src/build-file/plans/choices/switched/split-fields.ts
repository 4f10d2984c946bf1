import { layoutOf } from "../../layouts.ts";
import type { Plan } from "../../plan-schema.ts";
import type { PlanControl } from "../field.ts";
import { byOf, keyOf, placesToSwitch } from "./places-to-switch.ts";

const AUTOMATIC: Readonly<Record<string, number>> = { bridge: 2, neck: 4 };

export function splitFields(plan: Plan, pickup: string): PlanControl[] {
  const own = plan.split.find((split) => split.pickup === pickup);
  const others = plan.split.filter((split) => split.pickup !== pickup);
  const position = AUTOMATIC[pickup];
  const automatic =
    layoutOf(plan.layout).selector === "lever-5" && position !== undefined
      ? [{ value: keyOf({ position }), label: `by the lever, in position ${position}` }]
      : [];
  const made = (next: Plan["split"][number] | undefined): Plan => ({
    ...plan,
    split: next ? [...others, next] : others,
  });
  const field: PlanControl = {
    id: `split.${pickup}`,
    option: "split",
    title: `Split the ${pickup}`,
    kind: "choice",
    value: keyOf(own?.by),
    choices: [...placesToSwitch(plan, own?.by, `${pickup}Split`), ...automatic],
    made: (value) => {
      const by = byOf(value);
      return made(by === undefined ? undefined : { ...own, pickup, by });
    },
  };
  if (!own) return [field];
  return [
    field,
    {
      id: `split.${pickup}.keeps`,
      option: "split",
      title: `Split ${pickup} keeps`,
      kind: "choice",
      value: own.keeps ?? coilsOf(plan, pickup)[0]!,
      choices: coilsOf(plan, pickup).map((coil) => ({ value: coil, label: `the ${coil} coil` })),
      made: (keeps) => made({ ...own, keeps }),
    },
  ];
}

function coilsOf(plan: Plan, pickup: string): string[] {
  const spec = plan.pickups[pickup]!;
  return typeof spec !== "string" && "kind" in spec ? Object.keys(spec.coils) : ["slug", "screw"];
}
