import { PresolderError } from "../../errors.ts";
import { type Across, coilImpedance } from "./coil-model.ts";
import { type Guess, LOSS_MODELS, type LossModel } from "./coil-shapes.ts";
import type { FitProblem } from "./fit-attempt.ts";
import { type Fit, fitCoil, leastErrors } from "./fit-problem.ts";
import { unevenScatter } from "./uneven-scatter.ts";

/** An impedance measured between a coil's leads; lists of equal length. */
export interface ImpedanceTable {
  readonly frequenciesHz: readonly number[];
  readonly ohms: readonly number[];
  readonly degrees?: readonly number[] | undefined;
  /** How far off each may be, as a fraction; left out: all alike. */
  readonly errors?: readonly number[] | undefined;
}

export interface KnownBeside {
  /** What hangs across the coil during the measurement. */
  readonly across?: Across | undefined;
  /** DC resistance, and how well the meter knows it. */
  readonly resistance?: { readonly ohms: number; readonly precision: number } | undefined;
  /** Relative standard deviation of each measured magnitude. */
  readonly precision?: number | undefined;
  readonly models?: readonly LossModel[] | undefined;
  /** Called between evaluations; may throw to give the work up. */
  readonly checkpoint?: (() => void) | undefined;
}

const LEAST_POINTS = 5;

const USUAL_WINDING_FARADS = 120e-12;

const UNEVEN =
  "Some lines are off far more than others, and count by how far their neighbours are off. A table computed from voltages with and" +
  " without a load says little where the two are nearly alike: give each line's error, or fit the voltages themselves.";

/** The frequency nearest to a target, among those up to the peak. */
function nearestIndex(frequenciesHz: readonly number[], targetHz: number, last: number): number {
  let best = 0;
  for (let i = 1; i <= last; i++)
    if (Math.abs(Math.log(frequenciesHz[i]! / targetHz)) < Math.abs(Math.log(frequenciesHz[best]! / targetHz)))
      best = i;
  return best;
}

/** First values from the look of the table: R where it is low, L on the slope, C from the peak where there is one. */
function guessFrom({ frequenciesHz, ohms }: ImpedanceTable, known: KnownBeside): Guess {
  const peak = ohms.reduce((best, value, i) => (value > ohms[best]! ? i : best), 0);
  const showsPeak = frequenciesHz.some((hertz) => hertz > frequenciesHz[peak]!);
  const peakHz = frequenciesHz[peak]!;
  const resistance = known.resistance?.ohms ?? Math.min(...ohms);
  const slope = nearestIndex(frequenciesHz, showsPeak ? peakHz / 3 : peakHz, peak);
  const reactance = Math.sqrt(Math.max(ohms[slope]! ** 2 - resistance ** 2, (0.1 * ohms[slope]!) ** 2));
  // A parallel capacitance makes L look larger by 1/(1 − (f/f0)²).
  const nearness = showsPeak ? Math.max(0.1, 1 - (frequenciesHz[slope]! / peakHz) ** 2) : 1;
  const inductance = (reactance * nearness) / (2 * Math.PI * frequenciesHz[slope]!);
  const total = 1 / (inductance * (2 * Math.PI * peakHz) ** 2);
  const own = Math.max(total - (known.across?.capacitance ?? 0), total / 10);
  return { resistance, inductance, capacitance: showsPeak ? own : USUAL_WINDING_FARADS, loss: ohms[peak]! };
}

function wrapped(radians: number): number {
  return radians - 2 * Math.PI * Math.round(radians / (2 * Math.PI));
}

/**
 * Fits a coil to an impedance table. Errors are relative: the logarithm of the magnitude, and the phase in radians where given,
 * both of the same precision.
 * @throws PresolderError DATA_INSUFFICIENT
 */
export function fitImpedance(table: ImpedanceTable, known: KnownBeside = {}): Fit {
  const { frequenciesHz, ohms, degrees } = table;
  if (frequenciesHz.length < LEAST_POINTS) {
    const message = `The table has ${frequenciesHz.length} lines; expected at least ${LEAST_POINTS}`;
    throw new PresolderError("DATA_INSUFFICIENT", message);
  }
  const logs = ohms.map(Math.log);
  const radians = degrees?.map((angle) => (angle * Math.PI) / 180);
  const count = frequenciesHz.length;
  const problem: FitProblem = {
    guess: guessFrom(table, known),
    errors: (coil) => {
      const errors = new Float64Array(radians ? 2 * count : count);
      for (let i = 0; i < count; i++) {
        const { re, im } = coilImpedance(coil, frequenciesHz[i]!, known.across);
        errors[i] = logs[i]! - Math.log(Math.hypot(re, im));
        if (radians) errors[count + i] = wrapped(radians[i]! - Math.atan2(im, re));
      }
      return errors;
    },
    precision: known.precision,
    resistance: known.resistance,
    free: [],
    expected: table.errors && {
      stated: Float64Array.from(radians ? [...table.errors, ...table.errors] : table.errors),
    },
    runs: radians
      ? [
          [0, count],
          [count, 2 * count],
        ]
      : [[0, count]],
    models: known.models ?? LOSS_MODELS,
    checkpoint: known.checkpoint,
    remedy: "Measure from well below the resonance to above it, closely around the peak.",
  };
  if (table.errors || known.precision !== undefined) return fitCoil(problem);
  const left = leastErrors(problem);
  const beside = left && unevenScatter(left, problem.runs);
  if (!beside) return fitCoil(problem);
  const fit = fitCoil({ ...problem, expected: { beside } });
  return { ...fit, notes: [...fit.notes, UNEVEN] };
}
