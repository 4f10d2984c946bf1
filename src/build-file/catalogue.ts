import { PICKUP_TYPES, type PickupType } from "./catalogue/pickup-types.ts";
import { METAL_TYPES, type MetalType } from "./catalogue/shieldings.ts";
import { LAYOUT_NAMES, type LayoutName, layoutOf } from "./plans/layouts.ts";
import { PLAN_PRESETS, type PlanPreset } from "./plans/presets.ts";

/** A value that is customary for a kind of part, as it would be written in a build file. */
export interface UsualValue {
  readonly value: string;
  readonly use: string;
}

/** A metre of a lead. */
export interface Cable {
  readonly name: string;
  readonly capacitance: string;
  readonly resistance: string;
  readonly use: string;
}

/** What a guitar is plugged into. */
export interface Load {
  readonly name: string;
  readonly resistance: string;
  readonly capacitance: string;
  readonly stopper?: string;
  readonly use: string;
}

export interface Catalogue {
  readonly pickups: readonly PickupType[];
  readonly metals: readonly MetalType[];
  readonly pots: readonly UsualValue[];
  readonly toneCaps: readonly UsualValue[];
  readonly trebleBleeds: readonly { capacitance: string; parallel?: string; series?: string; use: string }[];
  readonly cables: readonly Cable[];
  readonly loads: readonly Load[];
  readonly layouts: readonly {
    readonly name: LayoutName;
    readonly title: string;
    readonly pickups: readonly string[];
    readonly volumes: number;
    readonly tones: { readonly min: number; readonly max: number };
  }[];
  readonly plans: readonly PlanPreset[];
}

/** Of 20 AWG stranded copper. */
const USUAL_CONDUCTOR = "33m";

/** A triode's grid has C_gk + C_ga·(1 + A); what it gets behind 68k and 105p is 0.8 dB less at 10 kHz than what the input gets. */
const TRIODE = "105p";

const VALVE_INPUTS: readonly Load[] = [
  { name: "triode", resistance: "1M", capacitance: TRIODE, stopper: "68k", use: "a valve amplifier, triode first" },
  { name: "pentode", resistance: "1M", capacitance: "10p", stopper: "68k", use: "a valve amplifier, pentode first" },
  // Of two jacks with 68k each to one grid, the one alone has both in parallel.
  {
    name: "high-of-two",
    resistance: "1M",
    capacitance: TRIODE,
    stopper: "34k",
    use: "the high one of a valve amplifier's two inputs",
  },
  // 68k to the grid and 68k from there to ground: across the jack the same as 136k beside a quarter of the grid's behind 136k.
  {
    name: "low-of-two",
    resistance: "136k",
    capacitance: "26p",
    stopper: "136k",
    use: "the low one of a valve amplifier's two inputs",
  },
];

/** Generic values by type; no maker's part. What each of them rests on is told in `sources/`. */
export const CATALOGUE: Catalogue = {
  pickups: PICKUP_TYPES,
  metals: METAL_TYPES,
  pots: [
    { value: "250k", use: "single coils" },
    { value: "300k", use: "some older two-humbucker guards' volumes" },
    { value: "500k", use: "humbuckers and wide single coils" },
    { value: "1M", use: "the brightest load" },
  ],
  toneCaps: [
    { value: "10n", use: "a light tone control" },
    { value: "22n", use: "humbuckers, and single coils today" },
    { value: "47n", use: "single coils" },
    { value: "100n", use: "the darkest tone control, on older single-coil guards" },
  ],
  trebleBleeds: [
    { capacitance: "680p", use: "cap alone" },
    { capacitance: "1n", use: "cap alone, stronger" },
    { capacitance: "680p", parallel: "150k", use: "cap with a resistor beside it: milder, and a shorter volume taper" },
    { capacitance: "1n", series: "100k", use: "cap with a resistor in line: milder, taper unchanged" },
  ],
  cables: [
    { name: "low", capacitance: "60p", resistance: USUAL_CONDUCTOR, use: "a low-capacitance lead" },
    { name: "ordinary", capacitance: "100p", resistance: USUAL_CONDUCTOR, use: "an ordinary lead" },
    { name: "high", capacitance: "160p", resistance: USUAL_CONDUCTOR, use: "a high-capacitance lead" },
  ],
  loads: [
    ...VALVE_INPUTS,
    { name: "interface", resistance: "1M", capacitance: "160p", use: "an instrument input of a recording interface" },
    { name: "effect", resistance: "500k", capacitance: "0", use: "an effect box with a buffer" },
    { name: "wireless", resistance: "1M", capacitance: "0", use: "a wireless transmitter on a short lead" },
    { name: "line", resistance: "10k", capacitance: "0", use: "a line input, far too low for a pickup" },
  ],
  layouts: LAYOUT_NAMES.map((name) => {
    const { title, pickups, volumes, tones } = layoutOf(name);
    return { name, title, pickups, volumes, tones };
  }),
  plans: PLAN_PRESETS,
};
