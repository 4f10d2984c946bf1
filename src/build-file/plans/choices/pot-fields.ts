import { capitalised } from "../../../english.ts";
import { layoutOf } from "../layouts.ts";
import type { Plan, PlanTone, PlanVolume } from "../plan-schema.ts";
import { potOf, USUAL_CAP, withOption, withTones } from "./adapt.ts";
import type { PlanChoice, PlanControl } from "./field.ts";
import { potsOf, toneNamesOf } from "./pots.ts";

const TAPERS: readonly PlanChoice[] = [
  { value: "audio", label: "audio" },
  { value: "linear", label: "linear" },
  { value: "reverse-audio", label: "reverse audio" },
];

function volumesIn(plan: Plan): readonly PlanVolume[] {
  if (plan.volumes) return plan.volumes;
  const volume = plan.volume as PlanVolume;
  if (layoutOf(plan.layout).volumes === 1) return [volume];
  return [...layoutOf(plan.layout).pickups].reverse().map((pickup) => ({ ...volume, pickups: [pickup] }));
}

/** Volumes that are alike but for their pickup are written once. */
function withVolumes(plan: Plan, volumes: readonly PlanVolume[]): Plan {
  const bare = volumes.map(({ pickups: _, ...volume }) => volume);
  const isAlike = bare.every((volume) => JSON.stringify(volume) === JSON.stringify(bare[0]));
  const isUsual = !plan.volumes || volumes.every(({ pickups }, index) => pickups?.[0] === ["neck", "bridge"][index]);
  if (isAlike && isUsual) return withOption(withOption(plan, "volumes", undefined), "volume", bare[0]!);
  return withOption(withOption(plan, "volume", undefined), "volumes", [...volumes]);
}

/** A written value is another pot's, and so is what a meter read on it. */
function withTrack<Pot extends PlanTone | PlanVolume>({ measured: _, ...pot }: Pot, value: string): Pot {
  return { ...pot, pot: value } as Pot;
}

function taperField(id: string, title: string, pot: PlanTone | PlanVolume, made: (taper: string) => Plan): PlanControl {
  const isOwn = Array.isArray(pot.taper);
  const own: PlanChoice[] = isOwn ? [{ value: "own", label: "its own table", reason: "as it stands" }] : [];
  return {
    id,
    option: id.startsWith("tone") ? "tones" : "volume",
    title,
    kind: "choice",
    value: isOwn ? "own" : ((pot.taper as string | undefined) ?? "audio"),
    choices: [...own, ...TAPERS],
    made,
  };
}

function withTaper<Pot extends PlanTone | PlanVolume>({ taper: _, midpoint: __, ...pot }: Pot, taper: string): Pot {
  return (taper === "audio" ? pot : { ...pot, taper }) as Pot;
}

export function volumeFields(plan: Plan): PlanControl[] {
  const volumes = volumesIn(plan);
  const words = potsOf(plan).map((pot) => capitalised(pot.words));
  const changed = (index: number, volume: PlanVolume) => withVolumes(plan, volumes.with(index, volume));
  return volumes.flatMap((volume, index): PlanControl[] => [
    {
      id: `volume${index + 1}.pot`,
      option: "volume",
      title: `${words[index]} pot`,
      kind: "quantity",
      dimension: "resistance",
      value: String(volume.pot),
      made: (value) => changed(index, withTrack(volume, value)),
    },
    taperField(`volume${index + 1}.taper`, `${words[index]} taper`, volume, (taper) =>
      changed(index, withTaper(volume, taper)),
    ),
  ]);
}

/** The knob works on one pickup more, or one less; all of them make it a master. */
function ticked(plan: Plan, index: number, pickup: string): Plan {
  const { pickups } = layoutOf(plan.layout);
  const all = pickups.length > 0 ? pickups : Object.keys(plan.pickups);
  const own = plan.tones[index]!.pickups ?? all;
  const next = own.includes(pickup) ? own.filter((each) => each !== pickup) : [...own, pickup];
  const isMaster = all.every((each) => next.includes(each));
  return withTones(
    plan,
    plan.tones.map((tone, other): PlanTone => {
      const { pickups: before, ...rest } = tone;
      if (other === index)
        return isMaster ? rest : { ...rest, pickups: [...all].reverse().filter((each) => next.includes(each)) };
      // A pickup goes from one knob to the other, unless it is the other's only one.
      const left = before?.filter((each) => isMaster || !next.includes(each)) ?? [];
      return before && left.length > 0 ? { ...rest, pickups: left } : tone;
    }),
  );
}

function ticksField(plan: Plan, index: number, words: string): PlanControl {
  const { pickups, selector } = layoutOf(plan.layout);
  const all = selector === "none" ? Object.keys(plan.pickups) : [...pickups].reverse();
  const own = plan.tones[index]!.pickups ?? all;
  const last = "a tone knob works on at least one pickup; choose a layout with fewer tones to take it off";
  return {
    id: `tone${index + 1}.pickups`,
    option: "tones",
    title: `${words} works on`,
    kind: "ticks",
    ticks: all.map((pickup) => ({
      value: pickup,
      label: pickup,
      on: own.includes(pickup),
      ...(own.length === 1 && own[0] === pickup ? { reason: last } : {}),
    })),
    made: (pickup) => ticked(plan, index, pickup),
  };
}

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

function capFields(plan: Plan): PlanControl[] {
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

function feedField(plan: Plan): PlanControl[] {
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
