import { powerDecibels } from "../../../decibels.ts";
import { SLICES } from "../../slices.ts";

export const LOWS_HZ = [50, 250] as const;
export const MIDDLE_HZ = [250, 1000] as const;
export const TREBLE_HZ = [2000, 5000] as const;

/** The energy of the slices whose middle lies in a span of frequencies, in dB. */
export function spanDb(energies: Float64Array, [low, high]: readonly [number, number]): number {
  let sum = 0;
  for (const [k, hz] of SLICES.frequenciesHz.entries()) if (hz >= low && hz < high) sum += energies[k]!;
  return powerDecibels(sum);
}
