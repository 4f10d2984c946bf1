import { type Checkpoint, NO_CHECKPOINT } from "../checkpoint.ts";
import type { Spectrum } from "../network/nodal-analysis.ts";
import type { PowerCurve } from "./features/power-curve.ts";
import { type Features, findFeatures } from "./features.ts";
import { logSpaced } from "./frequencies.ts";
import { type LevelAndPhase, magnitudeDb, unwrappedPhaseDegrees, weightedSum } from "./level-and-phase.ts";
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

export interface CurveOptions extends Partial<Checkpoint> {
  readonly withSources?: boolean;
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

/** Where a curve is evaluated to be known at the frequencies asked for. */
interface Path {
  readonly frequenciesHz: Float64Array;
  /** Where those asked for stand on it; undefined where they are the path itself. */
  readonly places: readonly number[] | undefined;
}

function pathThrough(wanted: Float64Array): Path {
  if (isFineEnough(wanted)) return { frequenciesHz: wanted, places: undefined };
  const frequenciesHz = bridged(wanted.toSorted());
  const placeOf = new Map(Array.from(frequenciesHz, (frequency, place) => [frequency, place]));
  return { frequenciesHz, places: Array.from(wanted, (frequency) => placeOf.get(frequency)!) };
}

function levelAndPhase(spectrum: Spectrum, { places }: Path): LevelAndPhase {
  const magnitude = magnitudeDb(spectrum);
  const phase = unwrappedPhaseDegrees(spectrum);
  if (!places) return { magnitude, phase };
  const wanted = (values: Float64Array) => Float64Array.from(places, (place) => values[place]!);
  return { magnitude: wanted(magnitude), phase: wanted(phase) };
}

/** Frequencies between two checkpoints: a tenth of a second where a hundred parts are solved frequency by frequency. */
const STEP = 32;

/** Every coil's transfer along a path, all of them from one solution. */
function spectraAlong({ frequenciesHz }: Path, transfers: Transfers, checkpoint: () => void): Spectrum[] {
  const count = frequenciesHz.length;
  const whole = transfers.sources.map(() => ({ re: new Float64Array(count), im: new Float64Array(count) }));
  for (let at = 0; at < count; at += STEP) {
    checkpoint();
    const step = transfers.perSource(frequenciesHz.subarray(at, at + STEP));
    for (const [index, { re, im }] of step.entries()) {
      whole[index]!.re.set(re, at);
      whole[index]!.im.set(im, at);
    }
  }
  return whole;
}

/** As `curve`, stopping where a checkpoint does. */
function heeding(curve: PowerCurve, checkpoint: () => void): PowerCurve {
  const { slope } = curve;
  return {
    ...curve,
    at: (frequencyHz) => {
      checkpoint();
      return curve.at(frequencyHz);
    },
    ...(slope && {
      slope: (frequencyHz: number) => {
        checkpoint();
        return slope(frequencyHz);
      },
    }),
    sample: (frequenciesHz) => {
      const powers = { power: new Float64Array(frequenciesHz.length), off: new Float64Array(frequenciesHz.length) };
      for (let i = 0; i < frequenciesHz.length; i++) {
        checkpoint();
        const { power, off } = curve.sample(frequenciesHz.subarray(i, i + 1));
        powers.power[i] = power[0]!;
        powers.off[i] = off[0]!;
      }
      return powers;
    },
  };
}

/** The level alone, in dB, where nobody asks for peak and cutoff: a third of a curve's work. */
export function magnitudeOf(transfers: Transfers, frequenciesHz: Float64Array): Float64Array {
  const path = pathThrough(frequenciesHz);
  const quick = path.places ? undefined : transfers.levelAndPhase?.(frequenciesHz);
  return (quick ?? levelAndPhase(transfers.total(path.frequenciesHz), path)).magnitude;
}

/**
 * The curve of one setting at the given frequencies (Hz, above 0, in any order).
 * Magnitude is in dB re the EMF of a coil with output 1; phase in degrees, unwrapped from the lowest frequency up.
 */
export function curveOf(transfers: Transfers, frequenciesHz: Float64Array, options: CurveOptions = {}): Curve {
  const { withSources = false, checkpoint = NO_CHECKPOINT.checkpoint } = options;
  const path = pathThrough(frequenciesHz);
  const isSolved = !transfers.levelAndPhase;
  const spectra = withSources || isSolved ? spectraAlong(path, transfers, checkpoint) : [];
  const emfs = transfers.sources.map(({ emf }) => emf);
  const total = () => (isSolved ? weightedSum(spectra, emfs) : transfers.total(path.frequenciesHz));
  const quick = path.places ? undefined : transfers.levelAndPhase?.(frequenciesHz);
  const power = transfers.power();
  const curve = {
    ...(quick ?? levelAndPhase(total(), path)),
    ...findFeatures(isSolved ? heeding(power, checkpoint) : power),
  };
  if (!withSources) return curve;
  const sources = transfers.sources.map(({ pickup, coil }, index) => {
    checkpoint();
    return { pickup, coil, ...levelAndPhase(spectra[index]!, path) };
  });
  return { ...curve, sources };
}
