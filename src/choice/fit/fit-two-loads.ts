import { NEPERS_OF_AMPLITUDE_PER_DB } from "../../decibels.ts";
import { PresolderError } from "../../errors.ts";
import type { CoilValues } from "../../response/coil-ladder.ts";
import { type Across, type Complex, coilImpedance } from "./coil-model.ts";
import { type Guess, LOSS_MODELS } from "./coil-shapes.ts";
import type { KnownBeside } from "./fit-impedance.ts";
import { type Fit, fitCoil } from "./fit-problem.ts";
import { type Free, freeDelay, freeLevel } from "./free.ts";
import type { Stretch } from "./independent-share.ts";
import type { Expected } from "./weighing.ts";

/** A coil's voltage with nothing but the instrument across it, over its voltage under a known load; lists of equal length. */
export interface RatioSweep {
  readonly frequenciesHz: readonly number[];
  /** dB; the level as a whole is free, as somebody may have touched the gain. */
  readonly levelsDb: readonly number[];
  readonly degrees: readonly number[];
  readonly load: Across;
  /** How far off each may be, as a fraction; left out: all alike. */
  readonly errors?: readonly number[] | undefined;
  /** Where both voltages were recorded one after the other: their time is free too, and not only by what an instrument's trigger may be off. */
  readonly freeDelay?: boolean | undefined;
}

const LEAST_POINTS = 8;

const RADIANS_PER_DEGREE = Math.PI / 180;

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

/** A pickup's usual values, common practice. */
const USUAL = { ohmsPerHenry: 2000, farads: 120e-12, loss: 500e3 };
const TELLING_DEGREES = 45;

/**
 * The inductance from an angle far below the resonance, which no level that was touched is in: with Z = R + jωL, R in proportion to L,
 * and Y = g + jωc, tan θ = ω(Lg + Rc)/(1 + Rg − ω²Lc).
 */
function guessFrom({ frequenciesHz, degrees, load }: RatioSweep, known: KnownBeside): Guess {
  const rising = [...frequenciesHz.keys()].sort((a, b) => frequenciesHz[a]! - frequenciesHz[b]!);
  const steepest = rising.reduce((best, i) => (degrees[i]! > degrees[best]! ? i : best));
  const at = rising.find((i) => degrees[i]! > TELLING_DEGREES) ?? steepest;
  const omega = 2 * Math.PI * frequenciesHz[at]!;
  const slope = Math.tan(Math.min(degrees[at]!, 80) * RADIANS_PER_DEGREE);
  const { re: g, im } = admittance(load, omega);
  const k = USUAL.ohmsPerHenry;
  const henries = slope / (omega * g + k * im - slope * (k * g - omega * im));
  const inductance = henries > 0 ? Math.min(20, Math.max(0.3, henries)) : 4;
  const resistance = known.resistance?.ohms ?? k * inductance;
  return { resistance, inductance, capacitance: USUAL.farads, loss: USUAL.loss };
}

function wrapped(radians: number): number {
  return radians - 2 * Math.PI * Math.round(radians / (2 * Math.PI));
}

/** Of one sweep: the logarithms of its sizes, then its angles in radians. */
function sweepErrors(coil: CoilValues, sweep: RatioSweep, across: Across | undefined): Float64Array {
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

/** Seconds by which the angles of two sweeps are off as a rule, as those of the open data set strayr/pickupAnalyseR-data spread. */
const TRIGGER_SECONDS = 2e-6;

function freedomsOf({ frequenciesHz, freeDelay: timeIsFree }: RatioSweep, start: number): Free[] {
  const level = freeLevel(start, frequenciesHz.length);
  const angles = start + frequenciesHz.length;
  return [level, freeDelay(angles, frequenciesHz, timeIsFree ? undefined : TRIGGER_SECONDS)];
}

/** Of the voltage unloaded, what an instrument adds to either, and the most it comes to of the lower one; common practice, no source. */
const FLOOR = 0.1;
const LARGEST_FLOOR = 2;

/** By the level at the lowest frequency, where a load hardly shows: a gain that was touched counts for nothing. */
function scaleBySize({ frequenciesHz, levelsDb }: RatioSweep): number[] {
  const lowest = frequenciesHz.reduce((low, hz, i) => (hz < frequenciesHz[low]! ? i : low), 0);
  return levelsDb.map((level) => {
    const ratio = Math.exp((level - levelsDb[lowest]!) * NEPERS_OF_AMPLITUDE_PER_DB);
    return Math.hypot(1, Math.min(LARGEST_FLOOR, FLOOR * ratio));
  });
}

/** Each as stated, where every sweep does. */
function expectedOf(sweeps: readonly RatioSweep[]): Expected {
  const twice = (of: (sweep: RatioSweep) => readonly number[]) =>
    Float64Array.from(sweeps.flatMap((sweep) => [...of(sweep), ...of(sweep)]));
  const isStated = sweeps.every(({ errors }) => errors);
  return isStated ? { stated: twice(({ errors = [] }) => errors) } : { beside: twice(scaleBySize) };
}

/** Of 22 real coils the circuit left all but one within this, and that one's run was noisy (strayr/pickupAnalyseR-data, reduced). */
const MOST_LEFT_DB = 0.55;

/** @throws DATA_INSUFFICIENT where no circuit of a coil comes near the sizes of a sweep */
function requireClose({ errors }: Fit, runs: readonly Stretch[]): void {
  for (const [i, [from, to]] of runs.entries()) {
    if (i % 2 > 0) continue;
    const square = errors.subarray(from, to).reduce((sum, error) => sum + error * error, 0) / (to - from);
    const left = Math.sqrt(square) / NEPERS_OF_AMPLITUDE_PER_DB;
    if (left <= MOST_LEFT_DB) continue;
    const message =
      `The coil that comes nearest leaves ${left.toFixed(2)} dB of the ${runs.length > 2 ? `ratio under load ${i / 2 + 1}` : "ratio"}, expected at` +
      ` most ${MOST_LEFT_DB} dB: one of the two voltages is noisy, or something was moved or touched between them. Measure both again`;
    throw new PresolderError("DATA_INSUFFICIENT", message);
  }
}

/**
 * Fits a coil to its voltage unloaded over loaded, under one known load or several in one fit. Errors are relative, of size and of
 * angle each alike; each sweep's level is free, and its time within what a trigger may be off.
 * @throws PresolderError DATA_INSUFFICIENT
 */
export function fitTwoLoads(sweeps: readonly RatioSweep[], known: KnownBeside = {}): Fit {
  for (const { frequenciesHz } of sweeps) {
    if (frequenciesHz.length >= LEAST_POINTS) continue;
    const message = `A table has ${frequenciesHz.length} lines; expected at least ${LEAST_POINTS}`;
    throw new PresolderError("DATA_INSUFFICIENT", message);
  }
  if (sweeps.length < 2 && !known.resistance) {
    const message = "One load alone hardly tells the resistance: give the DC resistance, or a second load";
    throw new PresolderError("DATA_INSUFFICIENT", message);
  }
  let from = 0;
  const starts = sweeps.map(({ frequenciesHz }) => {
    const start = from;
    from += 2 * frequenciesHz.length;
    return start;
  });
  const runs = sweeps.flatMap(({ frequenciesHz: { length } }, i): Stretch[] => [
    [starts[i]!, starts[i]! + length],
    [starts[i]! + length, starts[i]! + 2 * length],
  ]);
  const fit = fitCoil({
    guess: guessFrom(sweeps[0]!, known),
    errors: (coil) => {
      const errors = new Float64Array(from);
      for (const [i, sweep] of sweeps.entries()) errors.set(sweepErrors(coil, sweep, known.across), starts[i]!);
      return errors;
    },
    precision: known.precision,
    resistance: known.resistance,
    free: sweeps.flatMap((sweep, i) => freedomsOf(sweep, starts[i]!)),
    expected: expectedOf(sweeps),
    runs,
    stretches: runs,
    models: known.models ?? LOSS_MODELS,
    checkpoint: known.checkpoint,
    remedy:
      "Measure from 60 Hz to beyond the resonance, with a load that changes it much: 200 kΩ with 470 pF, and as a second one 10 nF.",
  });
  if (sweeps.every(({ errors }) => !errors)) requireClose(fit, runs);
  return fit;
}
