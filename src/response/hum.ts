import type { Coil } from "../build-file/schema.ts";
import { SILENCE_DB } from "../decibels.ts";
import { settledDecibels } from "./features/settled.ts";
import { weightedSum } from "./level-and-phase.ts";
import type { CoilSource } from "./pickup-elements.ts";
import type { Transfers } from "./transfers.ts";

/** Mains frequency of most of the world; at 60 Hz a guard's hum differs by hundredths of a decibel. */
export const MAINS_HZ = 50;
/** Inductance of the reference single coil, whose hum is 0 dB; common practice, no source. */
const REFERENCE_COIL_HENRIES = 2.4;

/**
 * How much hum a coil takes up beside a reference single coil: its turns, since coils of guitar pickups enclose about the
 * same area. Turns go with the square root of inductance: L ∝ N² for one shape of coil (textbook).
 */
export function turnsScale(coil: Pick<Coil, "inductance">): number {
  return Math.sqrt(coil.inductance / REFERENCE_COIL_HENRIES);
}

/**
 * Net hum at the jack in one setting, in dB re the hum of one reference single coil with no load: every coil takes up the
 * same field by its turns, with the sign of its winding alone; to a ten-thousandth of a dB, the same however the transfers
 * were computed. SILENCE_DB where nothing is left.
 */
export function humLevelDb(transfers: Pick<Transfers, "sources" | "perSource" | "offPerSource" | "exact">): number {
  const { sources, perSource, offPerSource, exact } = transfers;
  const weights = humWeights(sources);
  const mains = Float64Array.of(MAINS_HZ);
  const { re, im } = weightedSum(perSource(mains), weights);
  const offs = (exact && offPerSource?.(mains)) ?? [];
  const off = offs.reduce((sum, each, source) => sum + Math.abs(weights[source]!) * each[0]!, 0);
  const settled = settledDecibels({ value: Math.hypot(re[0]!, im[0]!), off });
  return settled ?? (exact ? humLevelDb(exact()) : SILENCE_DB);
}

/** Each coil's hum in that of one reference coil, with the sign of its winding. */
export function humWeights(sources: readonly CoilSource[]): number[] {
  return sources.map(({ humSign, spec }) => humSign * turnsScale(spec));
}
