import type { Spectrum } from "../network/nodal-analysis.ts";
import { type Features, findFeatures } from "./features.ts";
import { logSpaced } from "./frequencies.ts";
import { type LevelAndPhase, magnitudeDb, unwrappedPhaseDegrees } from "./level-and-phase.ts";
import type { Transfers } from "./transfers.ts";

export interface SourceCurve {
  readonly pickup: string;
  readonly coil: string;
  /** dB re this coil's unit EMF, without its own size and sign. */
  readonly magnitude: Float64Array;
  readonly phase: Float64Array;
}

export interface Curve extends Features {
  readonly magnitude: Float64Array;
  readonly phase: Float64Array;
  readonly sources?: readonly SourceCurve[];
}

/** Neighbours closer than this ratio need no frequencies between them for the phase to be followed. */
const MAX_UNWRAP_RATIO = 1.05;

/** Rising frequencies with none farther from the last than the ratio, so that unwrapping cannot miss a turn. */
function bridged(rising: Float64Array): Float64Array {
  const filled: number[] = [];
  for (const frequency of rising) {
    const last = filled.at(-1);
    if (last !== undefined && frequency / last > MAX_UNWRAP_RATIO) {
      const steps = Math.ceil(Math.log(frequency / last) / Math.log(MAX_UNWRAP_RATIO));
      filled.push(...logSpaced(last, frequency, steps + 1).subarray(1, steps));
    }
    filled.push(frequency);
  }
  return Float64Array.from(filled);
}

function isFineEnough(frequenciesHz: Float64Array): boolean {
  return frequenciesHz.every((frequency, i) => {
    const ratio = i === 0 ? 1 : frequency / frequenciesHz[i - 1]!;
    return ratio >= 1 && ratio <= MAX_UNWRAP_RATIO;
  });
}

type Transfer = (frequenciesHz: Float64Array) => Spectrum;

function levelAndPhase(transfer: Transfer, frequenciesHz: Float64Array): LevelAndPhase {
  const spectrum = transfer(frequenciesHz);
  const magnitude = magnitudeDb(spectrum);
  if (isFineEnough(frequenciesHz)) return { magnitude, phase: unwrappedPhaseDegrees(spectrum) };
  const fine = bridged(frequenciesHz.toSorted());
  const phases = unwrappedPhaseDegrees(transfer(fine));
  const byFrequency = new Map(Array.from(fine, (frequency, i) => [frequency, phases[i]!]));
  return { magnitude, phase: frequenciesHz.map((frequency) => byFrequency.get(frequency)!) };
}

/**
 * The curve of one setting at the given frequencies (Hz, above 0, in any order).
 * Magnitude is in dB re the EMF of a coil with output 1; phase in degrees, unwrapped from the lowest frequency up.
 */
export function curveOf(transfers: Transfers, frequenciesHz: Float64Array, withSources = false): Curve {
  const quick = isFineEnough(frequenciesHz) ? transfers.levelAndPhase?.(frequenciesHz) : undefined;
  const curve = {
    ...(quick ?? levelAndPhase((list) => transfers.total(list), frequenciesHz)),
    ...findFeatures(transfers.power()),
  };
  if (!withSources) return curve;
  const sources = transfers.sources.map(({ pickup, coil }, index) => ({
    pickup,
    coil,
    ...levelAndPhase((list) => transfers.perSource(list)[index]!, frequenciesHz),
  }));
  return { ...curve, sources };
}
