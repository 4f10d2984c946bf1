import type { Coil } from "../../build-file/schema.ts";
import { turnsScale } from "../../response/hum.ts";

/** Turns of the reference single coil: customary for its 6 kΩ of 0.063 mm wire; common practice, no source. */
export const REFERENCE_TURNS = 8000;
/** What its mean turn encloses, 62 × 8 mm with round ends; from memory, common practice. */
export const REFERENCE_TURN_AREA = 4.8e-4;

/** How far off the turns times area of a coil may be, in dB: pole pieces raise inductance and flux differently in each make. */
export const TURNS_AREA_UNCERTAINTY_DB = 3;

/**
 * Turns times area of a coil, m²: EMF = 2πf·B·(N·A) (Faraday). Turns from inductance, L ∝ N² for one shape of coil. The wire's
 * own length agrees for the reference coil: 8000 turns of 0.14 m at 5.45 Ω/m (IEC 60317, 0.063 mm) are 6.1 kΩ.
 */
export function turnsArea(coil: Pick<Coil, "inductance">): number {
  return REFERENCE_TURNS * REFERENCE_TURN_AREA * turnsScale(coil);
}
