import { PICKUP_TYPES, type PickupType } from "./catalogue/pickup-types.ts";
import { METAL_TYPES, type MetalType, SHIELDING_BASIS } from "./catalogue/shieldings.ts";
import { PLACES_BASIS } from "./catalogue/sources.ts";
import { LAYOUT_NAMES, type LayoutName, layoutOf } from "./plans/layouts.ts";
import { PLAN_PRESETS, type PlanPreset } from "./plans/presets.ts";

/** A value that is customary for a kind of part, as it would be written in a build file. */
export interface UsualValue {
  readonly value: string;
  readonly use: string;
}

export interface Catalogue {
  readonly pickups: readonly PickupType[];
  readonly metals: readonly MetalType[];
  readonly pots: readonly UsualValue[];
  readonly toneCaps: readonly UsualValue[];
  readonly trebleBleeds: readonly { capacitance: string; parallel?: string; series?: string; use: string }[];
  readonly cables: readonly UsualValue[];
  readonly loads: readonly { resistance: string; capacitance: string; use: string }[];
  readonly layouts: readonly {
    readonly name: LayoutName;
    readonly title: string;
    readonly pickups: readonly string[];
    readonly volumes: number;
    readonly tones: { readonly min: number; readonly max: number };
  }[];
  readonly plans: readonly PlanPreset[];
  readonly basis: Readonly<
    Record<"pots" | "toneCaps" | "trebleBleeds" | "cables" | "loads" | "metals" | "places", string>
  >;
}

const COMMON_PRACTICE = "common practice, no source";

/** Generic values by type, each list with what it rests on; no maker's part. */
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
    { value: "60p", use: "a metre of a low-capacitance lead" },
    { value: "100p", use: "a metre of an ordinary lead" },
    { value: "160p", use: "a metre of a high-capacitance lead" },
  ],
  loads: [
    {
      resistance: "1M",
      capacitance: "100p",
      use: "a valve amplifier's input",
    },
    { resistance: "1M", capacitance: "160p", use: "an instrument input of a recording interface" },
    { resistance: "500k", capacitance: "0", use: "a buffered pedal" },
    { resistance: "10k", capacitance: "0", use: "a line input, far too low for a pickup" },
  ],
  layouts: LAYOUT_NAMES.map((name) => {
    const { title, pickups, volumes, tones } = layoutOf(name);
    return { name, title, pickups, volumes, tones };
  }),
  plans: PLAN_PRESETS,
  basis: {
    pots: COMMON_PRACTICE,
    toneCaps: COMMON_PRACTICE,
    trebleBleeds: COMMON_PRACTICE,
    cables:
      "about 100 pF a metre is the published common figure for interconnect cable; the ends of the span are from memory",
    loads:
      "1 MΩ: B. Judge, Feel the Gain, part 1: guitar input; 100 pF, of the first valve behind its stopper: common practice, no source; 1 MΩ ∥ 160 pF: a published loaded pickup measurement; the rest are common practice, no source",
    metals: SHIELDING_BASIS,
    places: PLACES_BASIS,
  },
};
