import type { z } from "zod";
import type { coilSchema } from "../part-schemas.ts";
import { COVERED_HUMBUCKER, NECK_COVER, OPEN_HUMBUCKER, WIDE_SINGLE } from "./shieldings.ts";
import { AS_MEASURED, type PickupBasis, TYPICAL_HUMBUCKER, TYPICAL_SINGLE, WITHIN_RANGES } from "./sources.ts";

export type CoilInput = z.input<typeof coilSchema>;

/** A generic pickup, by what it is. */
export interface PickupType {
  readonly name: string;
  readonly title: string;
  readonly basis: PickupBasis;
  readonly coils: Readonly<Record<string, CoilInput>>;
  readonly conductors?: 2 | 4;
  readonly coupling?: number;
  readonly metal?: "cover" | "baseplate" | "braid";
  /** Between the middles of two coils that lie side by side along the strings. */
  readonly coilSpacing?: string;
  /** The pot value that this type is usually given (common practice, no source). */
  readonly usualPot: string;
}

const SINGLE_APERTURE = "12mm";
const REVERSED = { winding: "reverse", magnet: "south" } as const;

/** On alnico rods nothing is lost to steel: the inductance stays what it is up to the resonance and beyond. */
const vintage = { resistance: "6k", inductance: "2.5H", capacitance: "250p", loss: "1.5M", aperture: SINGLE_APERTURE };
const medium = { ...vintage, resistance: "6.6k", inductance: "2.8H", output: 1.1 };
const hot = { ...medium, resistance: "7.6k", inductance: "3.4H", output: 1.3 };
/** Bar magnets and steel screws. */
const wide = {
  ...hot,
  resistance: "7.8k",
  inductance: "4.2H",
  capacitance: "130p",
  loss: [{ resistance: "25k", inductance: "2.1H" }],
  shielding: WIDE_SINGLE,
  output: 1.5,
  aperture: "18mm",
};

const SINGLES: readonly PickupType[] = [
  single("single-vintage", "Single coil, vintage wind", vintage),
  single("single-vintage-rwrp", "Single coil, vintage wind, reverse wound, reverse polarity", {
    ...vintage,
    ...REVERSED,
  }),
  single("single-medium", "Single coil, medium wind", medium),
  single("single-medium-rwrp", "Single coil, medium wind, reverse wound, reverse polarity", { ...medium, ...REVERSED }),
  { ...single("single-hot", "Single coil, hot wind", hot), basis: WITHIN_RANGES },
  {
    ...single("single-hot-rwrp", "Single coil, hot wind, reverse wound, reverse polarity", { ...hot, ...REVERSED }),
    basis: WITHIN_RANGES,
  },
  {
    ...single("single-covered", "Small single coil under a metal cover, for the neck", {
      resistance: "7.8k",
      inductance: "1.4H",
      capacitance: "165p",
      // A cover's eddy currents make a loss that is not one resistor: the slope above resonance steepens.
      loss: [{ resistance: "35k", inductance: "1.6H" }],
      shielding: NECK_COVER,
      output: 0.8,
      aperture: SINGLE_APERTURE,
    }),
    metal: "cover",
    basis: AS_MEASURED,
  },
  { ...single("p90", "Wide single coil on bar magnets", wide), basis: AS_MEASURED, usualPot: "500k" },
  {
    ...single("p90-rwrp", "Wide single coil, reverse wound, reverse polarity", { ...wide, ...REVERSED }),
    basis: AS_MEASURED,
    usualPot: "500k",
  },
];

function single(name: string, title: string, coil: CoilInput): PickupType {
  return { name, title, basis: TYPICAL_SINGLE, coils: { coil }, usualPot: "250k" };
}

const SIDE_BY_SIDE = "18mm";

/** Two coils wound alike over opposite poles, as humbuckers are made. */
function humbucker(name: string, title: string, coil: CoilInput, rest: Partial<PickupType> = {}): PickupType {
  const model = { shielding: OPEN_HUMBUCKER, aperture: SINGLE_APERTURE, ...coil };
  return {
    name,
    title,
    basis: TYPICAL_HUMBUCKER,
    coils: { slug: model, screw: { ...model, magnet: "south" } },
    conductors: 4,
    coupling: 0.13,
    metal: "baseplate",
    coilSpacing: SIDE_BY_SIDE,
    usualPot: "500k",
    ...rest,
  };
}

const HUMBUCKERS: readonly PickupType[] = [
  humbucker(
    "humbucker-vintage",
    "Humbucker, vintage wind, two conductors, metal cover",
    {
      resistance: "3.8k",
      inductance: "1.4H",
      capacitance: "240p",
      // The resistor across the whole inductance is the cover's loss (`cover.ts`).
      loss: [{ resistance: "7k", inductance: "0.45H" }, { resistance: "462k" }],
      shielding: COVERED_HUMBUCKER,
      output: 0.75,
    },
    { conductors: 2, metal: "cover" },
  ),
  humbucker("humbucker-medium", "Humbucker, medium wind, four conductors", {
    resistance: "4.1k",
    inductance: "1.5H",
    capacitance: "220p",
    loss: [{ resistance: "11k", inductance: "0.6H" }],
    output: 0.85,
  }),
  humbucker(
    "humbucker-hot",
    "Humbucker, hot wind, four conductors",
    {
      resistance: "7.2k",
      inductance: "2.2H",
      capacitance: "220p",
      loss: [{ resistance: "10k", inductance: "0.85H" }],
      output: 1.2,
    },
    { basis: AS_MEASURED },
  ),
  humbucker(
    "mini-humbucker",
    "Mini humbucker, four conductors",
    {
      resistance: "3.3k",
      inductance: "1.1H",
      capacitance: "200p",
      loss: [{ resistance: "6k", inductance: "0.35H" }, { resistance: "363k" }],
      shielding: COVERED_HUMBUCKER,
      output: 0.6,
      aperture: "8mm",
    },
    { basis: WITHIN_RANGES, coilSpacing: "12mm", metal: "cover" },
  ),
  humbucker(
    "single-sized-humbucker",
    "Humbucker in a single coil's size, four conductors",
    {
      resistance: "4.6k",
      inductance: "1.5H",
      capacitance: "220p",
      loss: [{ resistance: "8k", inductance: "0.5H" }],
      output: 0.75,
      aperture: "7mm",
    },
    { basis: WITHIN_RANGES, coilSpacing: "9mm" },
  ),
  {
    name: "stacked-single",
    title: "Stacked single coil, hum cancelling, two conductors",
    basis: WITHIN_RANGES,
    coils: {
      upper: { resistance: "4.2k", inductance: "2.1H", capacitance: "220p", loss: "600k", aperture: SINGLE_APERTURE },
      lower: {
        resistance: "4.2k",
        inductance: "1.9H",
        capacitance: "220p",
        loss: "600k",
        winding: "reverse",
        output: 0.15,
        aperture: SINGLE_APERTURE,
      },
    },
    conductors: 2,
    // Both coils sit on the same rods, so they share much more flux than coils side by side.
    coupling: 0.4,
    usualPot: "250k",
  },
];

export const PICKUP_TYPES: readonly PickupType[] = [...SINGLES, ...HUMBUCKERS];

export const PICKUP_TYPE_NAMES: readonly string[] = PICKUP_TYPES.map((type) => type.name);

export function pickupType(name: string): PickupType | undefined {
  return PICKUP_TYPES.find((type) => type.name === name);
}
