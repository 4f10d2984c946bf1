import { NEPERS_OF_AMPLITUDE_PER_DB } from "../../decibels.ts";
import { PresolderError } from "../../errors.ts";
import { closeness } from "./closeness.ts";
import { LOSS_MODELS } from "./coil-shapes.ts";
import type { FitProblem } from "./fit-attempt.ts";
import type { KnownBeside } from "./fit-impedance.ts";
import { type Fit, fitCoil, leastErrors } from "./fit-problem.ts";
import { type Free, freeDelay, freeLevel } from "./free.ts";
import { guessFromRatio } from "./guess-from-ratio.ts";
import type { Stretch } from "./independent-share.ts";
import { loadParts, withLoadsOff } from "./load-off.ts";
import { type RatioSweep, sweepErrors } from "./loaded-ratio.ts";
import { unevenSweeps } from "./uneven-scatter.ts";
import type { Expected } from "./weighing.ts";

const LEAST_POINTS = 8;

/** Seconds by which the angles of two sweeps are off as a rule, as those of the open data set strayr/pickupAnalyseR-data spread. */
const TRIGGER_SECONDS = 2e-6;

function freedomsOf({ frequenciesHz, freeDelay: timeIsFree }: RatioSweep, start: number): Free[] {
  const level = freeLevel(start, frequenciesHz.length);
  const angles = start + frequenciesHz.length;
  return [level, freeDelay(angles, frequenciesHz, timeIsFree ? undefined : TRIGGER_SECONDS)];
}

/** Of the voltage unloaded, what an instrument adds to either, and the most it comes to of the lower one; a judgement, no source. */
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

const UNEVEN =
  "Some lines of the voltages are off far more than others, and count by how far their neighbours are off.";

/** Where nobody says how far off each line is, and chance alone does not make them so unlike: by what a first fit leaves about each. */
function fitWeighed(problem: FitProblem, sweeps: readonly RatioSweep[]): Fit {
  const beside = problem.precision === undefined ? problem.expected?.beside : undefined;
  const left = beside && leastErrors(problem);
  const own = sweeps.map((_, i) => problem.runs.slice(2 * i, 2 * i + 2));
  const uneven = left && unevenSweeps(left, beside, own);
  if (!uneven) return fitCoil(problem);
  const fit = fitCoil({ ...problem, expected: { beside: uneven } });
  return { ...fit, notes: [...fit.notes, UNEVEN] };
}

/**
 * Fits a coil to its voltage unloaded over loaded, under one known load or several in one fit. Errors are relative, of size and of
 * angle each alike; each sweep's level is free, its time within what a trigger may be off, and its load within its tolerance.
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
  const parts = loadParts(sweeps);
  const problem: FitProblem = {
    guess: guessFromRatio(sweeps[0]!, known),
    errors: (coil, off) => {
      const errors = new Float64Array(from);
      for (const [i, sweep] of withLoadsOff(sweeps, parts, off).entries())
        errors.set(sweepErrors(coil, sweep, known.across), starts[i]!);
      return errors;
    },
    beside: parts.map(({ deviation }) => deviation),
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
  };
  const fit = fitWeighed(problem, sweeps);
  return { ...fit, notes: [...fit.notes, ...closeness(fit, sweeps, starts)] };
}
