import { type Checkpoint, NO_CHECKPOINT } from "../checkpoint.ts";
import type { Spectrum } from "../network/nodal-analysis.ts";
import { type Settling, settleBy, settlingsOf } from "./digits/settle.ts";
import type { PowerCurve } from "./features/power-curve.ts";
import { type Features, findFeatures } from "./features.ts";
import { type FrequencyPath, pathThrough, wantedOn } from "./frequency-path.ts";
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

function levelAndPhase(spectrum: Spectrum, path: FrequencyPath, settling: Settling | undefined): LevelAndPhase {
  const levels = { magnitude: magnitudeDb(spectrum), phase: unwrappedPhaseDegrees(spectrum) };
  if (settling) settleBy(settling, levels, spectrum);
  return { magnitude: wantedOn(path, levels.magnitude), phase: wantedOn(path, levels.phase) };
}

/** Frequencies between two checkpoints: a tenth of a second where a hundred parts are solved frequency by frequency. */
const STEP = 32;

/** Every coil's transfer along a path, all of them from one solution. */
function spectraAlong({ frequenciesHz }: FrequencyPath, transfers: Transfers, checkpoint: () => void): Spectrum[] {
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
  return quick?.magnitude ?? wantedOn(path, magnitudeDb(transfers.total(path.frequenciesHz)));
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
  const settlings = quick && !withSources ? undefined : settlingsOf(transfers, path.frequenciesHz);
  const curve = {
    ...(quick ?? levelAndPhase(total(), path, settlings?.total)),
    ...findFeatures(isSolved ? heeding(power, checkpoint) : power),
  };
  if (!withSources) return curve;
  const sources = transfers.sources.map(({ pickup, coil }, index) => {
    checkpoint();
    return { pickup, coil, ...levelAndPhase(spectra[index]!, path, settlings?.perSource[index]) };
  });
  return { ...curve, sources };
}
