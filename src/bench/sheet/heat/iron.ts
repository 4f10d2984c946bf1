/** The iron that a person has. */
export interface Iron {
  /** °C that its tip is set to. */
  readonly celsius: number;
  readonly watts: number;
  readonly solder: "leaded" | "lead-free";
}

export const DEFAULT_IRON: Iron = { celsius: 350, watts: 60, solder: "leaded" };

/** Eutectic tin-lead melts at 183 °C; tin-silver-copper with 3 % silver is liquid from 220 °C (J-STD-006). */
const LIQUID_CELSIUS = { leaded: 183, "lead-free": 220 } as const;

/** Solder wets well only some way above its melting point (common practice, no source). */
const WETTING_KELVIN = 30;

/** °C that a joint must reach for solder to flow out on it. */
export function flowCelsius({ solder }: Iron): number {
  return LIQUID_CELSIUS[solder] + WETTING_KELVIN;
}
