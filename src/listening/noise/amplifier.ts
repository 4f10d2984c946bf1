import type { Build } from "../../build-file/schema.ts";

/** What an amplifier's input adds of its own, referred to the input. */
export interface AmplifierNoise {
  /** V/√Hz in series with the input, its resistor to ground left out, which the guitar's circuit counts. */
  readonly voltage: number;
  /** A/√Hz across the input. */
  readonly current: number;
}

export const BOLTZMANN = 1.380649e-23;
/** Resistances are those at 20 °C. */
export const USUAL_TEMPERATURE_KELVIN = 293.15;

/** A triode's equivalent noise resistance is 2.5/gm (F. Langford-Smith, Radio Designer's Handbook, 4th ed.; from memory): gm 1.6 mS. */
const TRIODE_OHMS = 2.5 / 1.6e-3;
/** Two 68 kΩ in parallel before the grid; common practice, no source. */
const USUAL_STOPPER_OHMS = 34e3;
/** Shot noise of a grid current of 1 nA, √(2qI); the current is common practice, no source. */
const GRID_CURRENT_NOISE = Math.sqrt(2 * 1.602176634e-19 * 1e-9);

/** A valve input stage: its triode and the stopper before the grid, the build's own where it says one. */
export function usualAmplifier({ load }: Pick<Build, "load">): AmplifierNoise {
  const ohms = TRIODE_OHMS + (load.stopper ?? USUAL_STOPPER_OHMS);
  return { voltage: Math.sqrt(4 * BOLTZMANN * USUAL_TEMPERATURE_KELVIN * ohms), current: GRID_CURRENT_NOISE };
}
