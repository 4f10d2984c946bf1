import { UNKNOWN_GAIN } from "../../measure/methods/channel-gain.ts";
import type { Unknown } from "./unknowns.ts";

/** The rig's unknowns belong to no part. */
export const RIG = "";

/** How the interface hangs on the jack. */
export interface Rig {
  readonly resistorOhms: number;
  /** Fraction. */
  readonly tolerance: number;
  readonly inputOhms: number;
  readonly inputFarads: number;
  /** Which of the interface's own input the person knows. */
  readonly known: { readonly ohms: boolean; readonly farads: boolean };
  /** Whether both channels were recorded on one point. */
  readonly isGainKnown: boolean;
}

/** An interface's high-impedance input, and a metre of lead at it (common practice, no source). */
export const USUAL_INPUT = { ohms: 1e6, farads: 160e-12 } as const;
const INPUT_DEVIATION = { ohms: 0.15, farads: 0.5 } as const;
const KNOWN_INPUT_DEVIATION = { ohms: 0.03, farads: 0.15 } as const;
/** And what a gain run leaves. */
const GAIN_DEVIATION = { unknown: UNKNOWN_GAIN, known: 2e-4 } as const;

export const RIG_FIELDS = ["resistor", "gain", "input.resistance", "input.capacitance"] as const;
export type RigField = (typeof RIG_FIELDS)[number];

export function rigUnknowns({ tolerance, known, isGainKnown }: Rig): Unknown[] {
  const deviationOf = (of: keyof Rig["known"]) => (known[of] ? KNOWN_INPUT_DEVIATION : INPUT_DEVIATION)[of];
  const deviations: Readonly<Record<RigField, number>> = {
    resistor: Math.max(1e-4, tolerance / Math.sqrt(3)),
    gain: isGainKnown ? GAIN_DEVIATION.known : GAIN_DEVIATION.unknown,
    "input.resistance": deviationOf("ohms"),
    "input.capacitance": deviationOf("farads"),
  };
  return RIG_FIELDS.map((field) => ({
    part: RIG,
    field,
    law: "log",
    deviation: deviations[field],
    tolerance: field === "resistor" ? tolerance : 0,
  }));
}
