import { capitalised } from "../../../../english.ts";
import { layoutOf } from "../../layouts.ts";
import type { Plan, PlanTone } from "../../plan-schema.ts";
import { withTones } from "../adapt.ts";
import { type PlanControl, withOption } from "../field.ts";
import { potOf, potsOf, toneNamesOf, USUAL_CAP } from "../pots.ts";
import { taperField, withTaper, withTrack } from "../track-fields.ts";
import { capFields, feedField } from "./cap-fields.ts";
import { ticksField } from "./tone-ticks.ts";

function countField(plan: Plan): PlanControl[] {
  const { min, max } = layoutOf(plan.layout).tones;
  if (min === max) return [];
  const counts = Array.from({ length: max - min + 1 }, (_, index) => min + index);
  const usual: PlanTone = { pot: potOf(plan), cap: USUAL_CAP };
  const neckFirst = [...layoutOf(plan.layout).pickups].reverse();
  return [
    {
      id: "tones",
      option: "tones",
      title: "Tone knobs",
      kind: "choice",
      value: String(plan.tones.length),
      choices: counts.map((count) => ({ value: String(count), label: ["none", "one", "two"][count] ?? String(count) })),
      made: (value) => {
        const [first = usual, second = first] = plan.tones;
        const { cap = plan.sharedCap ?? USUAL_CAP } = first;
        const alone = withOption(plan, "sharedCap", undefined);
        const { pickups: _, ...master } = { ...first, cap };
        if (value === "0") return withOption(withTones(alone, []), "toneFeed", "before-volume");
        if (value === "1") return withTones(alone, [master]);
        return withTones(
          alone,
          [first, second].map((tone, index) => ({ ...tone, cap: tone.cap ?? cap, pickups: [neckFirst[index]!] })),
        );
      },
    },
  ];
}

export function toneFields(plan: Plan): PlanControl[] {
  const words = toneNamesOf(plan).map((name) => capitalised(potsOf(plan).find((pot) => pot.name === name)!.words));
  const changed = (index: number, tone: PlanTone) => withTones(plan, plan.tones.with(index, tone));
  const each = plan.tones.flatMap((tone, index): PlanControl[] => [
    ...(Object.keys(plan.pickups).length > 1 ? [ticksField(plan, index, words[index]!)] : []),
    {
      id: `tone${index + 1}.pot`,
      option: "tones",
      title: `${words[index]} pot`,
      kind: "quantity",
      dimension: "resistance",
      value: String(tone.pot),
      made: (value) => changed(index, withTrack(tone, value)),
    },
    taperField(`tone${index + 1}.taper`, `${words[index]} taper`, tone, (taper) =>
      changed(index, withTaper(tone, taper)),
    ),
    ...(tone.cap === undefined
      ? []
      : [
          {
            id: `tone${index + 1}.cap`,
            option: "tones",
            title: `${words[index]} cap`,
            kind: "quantity" as const,
            dimension: "capacitance" as const,
            value: String(tone.cap),
            made: (value: string) => changed(index, { ...tone, cap: value }),
          },
        ]),
    {
      id: `tone${index + 1}.noLoad`,
      option: "tones",
      title: `${words[index]} at 10`,
      kind: "choice",
      value: tone.noLoad ? "no-load" : "loads",
      choices: [
        { value: "loads", label: "still loads the pickup" },
        { value: "no-load", label: "out of the circuit (no-load pot)" },
      ],
      made: (value) => {
        const { noLoad: _, ...rest } = tone;
        return changed(index, value === "no-load" ? { ...rest, noLoad: true } : rest);
      },
    },
  ]);
  return [...countField(plan), ...each, ...capFields(plan), ...feedField(plan)];
}
