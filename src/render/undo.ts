import { amplitudeFromDecibels, decibels } from "../decibels.ts";
import type { TransferFunction } from "../filter/impulse-response.ts";
import { logSpaced } from "../response/frequencies.ts";

/**
 * How far a circuit that a recording has already been through is undone: more would bring up the recording's own noise instead
 * of the string.
 */
export const MAX_BOOST_DB = 30;
/** What no arithmetic can put back, to be told with every such answer. */
export const UNKNOWN_FROM_A_RECORDING =
  "what another pickup would have heard at its own place on the string cannot be known from a recording; " +
  "the old pickups' place on the string stays in the sound";
const MAX_BOOST = amplitudeFromDecibels(MAX_BOOST_DB);
/** How sharply the boost turns into its bound: 0.01 dB short at 7 dB under it, 0.75 dB at the bound itself. */
const KNEE = 8;
/** Below this at every frequency the old circuit let nothing through that a recording could hold. */
const SILENT_GAIN = amplitudeFromDecibels(-60);
/** Less than this short of the exact answer goes untold. */
const TOLD_SHORTFALL_DB = 0.5;

const GRID = logSpaced(20, 20_000, 600);

/** A range of frequencies where the old circuit took away more than is put back. */
export interface UndoLimit {
  readonly fromHz: number;
  readonly toHz: number;
  /** By how much the result is too quiet at the worst place in the range. */
  readonly shortByDb: number;
}

/** Size of the boost for an exact ratio of new/old, the bound smoothly approached: new / ᵖ√(oldᵖ + (new/bound)ᵖ). */
function boundedRatio(newGain: number, oldGain: number): number {
  const largest = Math.max(oldGain, newGain / MAX_BOOST);
  if (largest === 0) return 0;
  const norm = ((oldGain / largest) ** KNEE + (newGain / MAX_BOOST / largest) ** KNEE) ** (1 / KNEE);
  return newGain / largest / norm;
}

/**
 * The transfer function that turns a recording made through `oldTotal` into one made through `newTotal`: their ratio, its gain
 * bounded at MAX_BOOST_DB, its phase kept. It may answer before its cause, so its filter needs a look-ahead.
 */
export function boundedUndo(newTotal: TransferFunction, oldTotal: TransferFunction): TransferFunction {
  return (frequenciesHz) => {
    const wanted = newTotal(frequenciesHz);
    const old = oldTotal(frequenciesHz);
    const re = new Float64Array(frequenciesHz.length);
    const im = new Float64Array(frequenciesHz.length);
    for (let i = 0; i < re.length; i++) {
      const crossRe = wanted.re[i]! * old.re[i]! + wanted.im[i]! * old.im[i]!;
      const crossIm = wanted.im[i]! * old.re[i]! - wanted.re[i]! * old.im[i]!;
      const cross = Math.hypot(crossRe, crossIm);
      if (cross === 0) continue;
      const gain = boundedRatio(Math.hypot(wanted.re[i]!, wanted.im[i]!), Math.hypot(old.re[i]!, old.im[i]!));
      re[i] = (gain * crossRe) / cross;
      im[i] = (gain * crossIm) / cross;
    }
    return { re, im };
  };
}

function gains(transfer: TransferFunction): Float64Array {
  const { re, im } = transfer(GRID);
  return re.map((value, i) => Math.hypot(value, im[i]!));
}

/** Whether a circuit lets so little through that a recording made with it holds nothing of the string. */
export function isSilent(total: TransferFunction): boolean {
  return gains(total).every((gain) => gain < SILENT_GAIN);
}

/** The ranges from 20 Hz to 20 kHz in which the bound holds the result back by more than half a decibel. */
export function undoLimits(newTotal: TransferFunction, oldTotal: TransferFunction): UndoLimit[] {
  const wanted = gains(newTotal);
  const old = gains(oldTotal);
  const limits: { fromHz: number; toHz: number; shortByDb: number }[] = [];
  let open: (typeof limits)[number] | undefined;
  for (let i = 0; i < GRID.length; i++) {
    const reached = boundedRatio(wanted[i]!, old[i]!);
    const short = wanted[i] === 0 ? 0 : decibels(wanted[i]! / Math.max(old[i]!, 1e-12) / reached);
    if (!(short > TOLD_SHORTFALL_DB)) {
      open = undefined;
      continue;
    }
    if (!open) {
      open = { fromHz: GRID[i]!, toHz: GRID[i]!, shortByDb: short };
      limits.push(open);
    }
    open.toHz = GRID[i]!;
    open.shortByDb = Math.max(open.shortByDb, short);
  }
  return limits;
}
