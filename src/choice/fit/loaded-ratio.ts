import { NEPERS_OF_AMPLITUDE_PER_DB } from "../../decibels.ts";
import type { CoilValues } from "../../response/coil-ladder.ts";
import { type Across, type Complex, coilImpedance } from "./coil-model.ts";

/** A coil's voltage with nothing but the instrument across it, over its voltage under a known load; lists of equal length. */
export interface RatioSweep {
  readonly frequenciesHz: readonly number[];
  /** dB; the level as a whole is free, as somebody may have touched the gain. */
  readonly levelsDb: readonly number[];
  readonly degrees: readonly number[];
  readonly load: Across;
  /** Of the load's resistance and of its capacitance, as a fraction; left out: both are taken as told. */
  readonly tolerance?: number | undefined;
  /** How far off each may be, as a fraction; left out: all alike. */
  readonly errors?: readonly number[] | undefined;
  /** Where both voltages were recorded one after the other: their time is free too, and not only by what an instrument's trigger may be off. */
  readonly freeDelay?: boolean | undefined;
}

export const RADIANS_PER_DEGREE = Math.PI / 180;

export function admittance({ resistance, capacitance }: Across, omega: number): Complex {
  return { re: Number.isFinite(resistance) ? 1 / resistance : 0, im: omega * capacitance };
}

/**
 * Unloaded over loaded: 1 + Z·Y, with Z the coil's own impedance with the instrument across it, and Y the load's admittance. Whatever
 * drives the coil, and whatever metal takes of its EMF, is in both voltages and cancels.
 */
export function loadedRatio(coil: CoilValues, frequencyHz: number, load: Across, across?: Across): Complex {
  const z = coilImpedance(coil, frequencyHz, across);
  const y = admittance(load, 2 * Math.PI * frequencyHz);
  return { re: 1 + z.re * y.re - z.im * y.im, im: z.re * y.im + z.im * y.re };
}

function wrapped(radians: number): number {
  return radians - 2 * Math.PI * Math.round(radians / (2 * Math.PI));
}

/** Of one sweep: the logarithms of its sizes, then its angles in radians. */
export function sweepErrors(coil: CoilValues, sweep: RatioSweep, across: Across | undefined): Float64Array {
  const { frequenciesHz, levelsDb, degrees, load } = sweep;
  const count = frequenciesHz.length;
  const errors = new Float64Array(2 * count);
  for (const [i, frequencyHz] of frequenciesHz.entries()) {
    const { re, im } = loadedRatio(coil, frequencyHz, load, across);
    errors[i] = levelsDb[i]! * NEPERS_OF_AMPLITUDE_PER_DB - Math.log(Math.hypot(re, im));
    errors[count + i] = wrapped(degrees[i]! * RADIANS_PER_DEGREE - Math.atan2(im, re));
  }
  return errors;
}
