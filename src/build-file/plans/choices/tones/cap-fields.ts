import type { Plan } from "../../plan-schema.ts";
import { type PlanControl, withOption } from "../field.ts";
import { USUAL_CAP } from "../pots.ts";

export function capFields(plan: Plan): PlanControl[] {
  if (plan.tones.length < 2) return [];
  const { sharedCap } = plan;
  const cap = sharedCap ?? plan.tones[0]!.cap ?? USUAL_CAP;
  const shared: PlanControl = {
    id: "sharedCap",
    option: "sharedCap",
    title: "Tone caps",
    kind: "choice",
    value: sharedCap === undefined ? "own" : "shared",
    choices: [
      { value: "own", label: "one for each knob" },
      { value: "shared", label: "one that both knobs share" },
    ],
    made: (value) => {
      const tones = plan.tones.map(({ cap: _, ...tone }) => (value === "shared" ? tone : { ...tone, cap }));
      return withOption({ ...plan, tones }, "sharedCap", value === "shared" ? cap : undefined);
    },
  };
  if (sharedCap === undefined) return [shared];
  return [
    shared,
    {
      id: "sharedCap.cap",
      option: "sharedCap",
      title: "Shared cap",
      kind: "quantity",
      dimension: "capacitance",
      value: String(sharedCap),
      made: (value) => ({ ...plan, sharedCap: value }),
    },
  ];
}

export function feedField(plan: Plan): PlanControl[] {
  if (plan.tones.length === 0) return [];
  return [
    {
      id: "toneFeed",
      option: "toneFeed",
      title: "Tone wired",
      kind: "choice",
      value: plan.toneFeed,
      choices: [
        { value: "before-volume", label: "before the volume" },
        { value: "after-volume", label: "after the volume" },
      ],
      made: (value) => ({ ...plan, toneFeed: value as Plan["toneFeed"] }),
    },
  ];
}
