import { NEPERS_OF_AMPLITUDE_PER_DB } from "../../decibels.ts";
import { PresolderError } from "../../errors.ts";
import { type Across, coilTransfer } from "./coil-model.ts";
import { type Guess, LOSS_MODELS } from "./coil-shapes.ts";
import type { KnownBeside } from "./fit-impedance.ts";
import { type Fit, fitCoil } from "./fit-problem.ts";
import { freeLevel } from "./free.ts";

/** A response measured at a coil's leads under a known load, the exciter's own slope taken out; lists of equal length. */
export interface ResponseTable {
  readonly frequenciesHz: readonly number[];
  /** dB; only differences between frequencies count. */
  readonly levelsDb: readonly number[];
}

export interface KnownLoad extends Omit<KnownBeside, "across"> {
  readonly load: Across;
}

const LEAST_POINTS = 6;

/** A pickup's usual values (2.8 H for a single coil by R. Stanley's note; the others common practice), moved to the peak's place. */
function guessFrom({ frequenciesHz, levelsDb }: ResponseTable, known: KnownLoad): Guess {
  const peak = levelsDb.reduce((best, level, i) => (level > levelsDb[best]! ? i : best), 0);
  const total = known.load.capacitance + 100e-12;
  const inductance = Math.min(20, Math.max(0.3, 1 / (total * (2 * Math.PI * frequenciesHz[peak]!) ** 2)));
  return { resistance: known.resistance?.ohms ?? 7000, inductance, capacitance: 100e-12, loss: 500e3 };
}

/**
 * Fits a coil to a response through a known load. The level as a whole is free. `precision` is relative (0.01 is 0.087 dB).
 * @throws PresolderError DATA_INSUFFICIENT
 */
export function fitResponse(table: ResponseTable, known: KnownLoad): Fit {
  const { frequenciesHz, levelsDb } = table;
  if (frequenciesHz.length < LEAST_POINTS) {
    const message = `The response has ${frequenciesHz.length} points; expected at least ${LEAST_POINTS}`;
    throw new PresolderError("DATA_INSUFFICIENT", message);
  }
  const logs = levelsDb.map((level) => level * NEPERS_OF_AMPLITUDE_PER_DB);
  return fitCoil({
    guess: guessFrom(table, known),
    errors: (coil) =>
      Float64Array.from(logs, (log, i) => {
        const { re, im } = coilTransfer(coil, frequenciesHz[i]!, known.load);
        return log - Math.log(Math.hypot(re, im));
      }),
    precision: known.precision,
    resistance: known.resistance,
    free: [freeLevel(0, logs.length)],
    runs: [[0, logs.length]],
    models: known.models ?? LOSS_MODELS,
    checkpoint: known.checkpoint,
    remedy: "A response alone hides the coil's impedance: give the DC resistance too, and measure beyond the peak.",
  });
}
