import { LAYOUT_NAMES, type LayoutName, layoutOf } from "../layouts.ts";
import type { Plan } from "../plan-schema.ts";
import { withLayout } from "./adapt.ts";
import { NONE, nothing, type PlanControl, withOption } from "./field.ts";
import { potsOf } from "./pots.ts";

export function layoutField(plan: Plan): PlanControl {
  return {
    id: "layout",
    option: "layout",
    title: "Layout",
    kind: "choice",
    value: plan.layout,
    choices: LAYOUT_NAMES.map((name) => ({ value: name, label: layoutOf(name).title })),
    made: (name) => withLayout(plan, name as LayoutName),
  };
}

type Bleed = NonNullable<Plan["trebleBleed"]>;

const BLEEDS = [
  { value: "cap", label: "a cap" },
  { value: "parallel", label: "a cap with a resistor beside it" },
  { value: "series", label: "a cap and a resistor in line" },
] as const;

const USUAL_BLEED = { capacitance: "680p", parallel: "150k", series: "100k" };

function bleedKind(bleed: Bleed | undefined): string {
  if (!bleed) return NONE;
  return bleed.parallel !== undefined ? "parallel" : bleed.series !== undefined ? "series" : "cap";
}

export function bleedFields(plan: Plan): PlanControl[] {
  const { trebleBleed: bleed } = plan;
  const kind = bleedKind(bleed);
  const capacitance = bleed?.capacitance ?? USUAL_BLEED.capacitance;
  const field: PlanControl = {
    id: "trebleBleed",
    option: "trebleBleed",
    title: "Treble bleed",
    kind: "choice",
    value: kind,
    choices: [nothing, ...BLEEDS],
    made: (value) => {
      const resistor = value === "parallel" || value === "series" ? { [value]: USUAL_BLEED[value] } : {};
      return withOption(plan, "trebleBleed", value === NONE ? undefined : { capacitance, ...resistor });
    },
  };
  if (!bleed) return [field];
  const part = (key: "capacitance" | "parallel" | "series", title: string): PlanControl => ({
    id: `trebleBleed.${key}`,
    option: "trebleBleed",
    title,
    kind: "quantity",
    dimension: key === "capacitance" ? "capacitance" : "resistance",
    value: String(bleed[key]),
    made: (value) => ({ ...plan, trebleBleed: { ...bleed, [key]: value } }),
  });
  const resistor = kind === "parallel" || kind === "series" ? [part(kind, "Treble bleed resistor")] : [];
  return [field, part("capacitance", "Treble bleed cap"), ...resistor];
}

const USUAL_RESISTOR = "470k";

/** One resistor for each pickup and pot at most; more than one in a place would be one. */
export function resistorFields(plan: Plan): PlanControl[] {
  const places = [
    ...Object.keys(plan.pickups).map((name) => ({ name, words: name })),
    ...potsOf(plan).filter(({ name }) => name.startsWith("volume")),
  ];
  return places.flatMap(({ name, words }): PlanControl[] => {
    const own = plan.resistors.find(({ across }) => across === name);
    const others = plan.resistors.filter(({ across }) => across !== name);
    const field: PlanControl = {
      id: `resistors.${name}`,
      option: "resistors",
      title: `Resistor across the ${words}`,
      kind: "choice",
      value: own ? "one" : NONE,
      choices: [nothing, { value: "one", label: "one resistor" }],
      made: (value) => ({
        ...plan,
        resistors: value === NONE ? others : [...others, { across: name, resistance: USUAL_RESISTOR }],
      }),
    };
    if (!own) return [field];
    return [
      field,
      {
        id: `resistors.${name}.value`,
        option: "resistors",
        title: `Its value, across the ${words}`,
        kind: "quantity",
        dimension: "resistance",
        value: String(own.resistance),
        made: (value) => ({
          ...plan,
          resistors: plan.resistors.map((each) => (each === own ? { ...own, resistance: value } : each)),
        }),
      },
    ];
  });
}

export function groundFields(plan: Plan): PlanControl[] {
  return [
    {
      id: "grounds",
      option: "grounds",
      title: "Grounds",
      kind: "choice",
      value: plan.grounds,
      choices: [
        { value: "cases", label: "to the pot cases" },
        { value: "star", label: "to one ground point" },
      ],
      made: (value) => ({ ...plan, grounds: value as Plan["grounds"] }),
    },
    {
      id: "shield",
      option: "shield",
      title: "Shielding",
      kind: "choice",
      value: plan.shield ? "foil" : NONE,
      choices: [{ value: "foil", label: "a foil under the guard, grounded" }, nothing],
      made: (value) => ({ ...plan, shield: value === "foil" }),
    },
  ];
}

export function volumeOrderField(plan: Plan): PlanControl[] {
  if (layoutOf(plan.layout).volumes === 1) return [];
  return [
    {
      id: "independentVolumes",
      option: "independentVolumes",
      title: "Either volume at 0",
      kind: "choice",
      value: plan.independentVolumes ? "own" : "both",
      choices: [
        { value: "both", label: "silences both pickups in the middle position" },
        { value: "own", label: "silences its own pickup alone" },
      ],
      made: (value) => ({ ...plan, independentVolumes: value === "own" }),
    },
  ];
}
