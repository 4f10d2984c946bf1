import { createRandom } from "../../src/audio/random.ts";
import { createRealFft } from "../../src/filter/real-fft.ts";

type Complex = readonly [re: number, im: number];

/** What a measuring signal goes through, and what the world adds. */
export interface Passage {
  readonly transfer?: (hz: number) => Complex;
  readonly gain?: number;
  readonly delaySeconds?: number;
  readonly driftPpm?: number;
  /** RMS of white noise, of full scale. */
  readonly noise?: number;
  readonly hum?: { readonly hz: number; readonly peak: number; readonly phase?: number };
  readonly bits?: 16 | 24;
  readonly clipAt?: number;
  readonly seed?: number;
}

/** Through a linear network: its transfer times the spectrum, with room for what it rings on. */
export function filtered(samples: Float32Array, rateHz: number, transfer: (hz: number) => Complex): Float32Array {
  const size = 2 ** Math.ceil(Math.log2(samples.length + rateHz));
  const fft = createRealFft(size);
  const [padded, spectrum] = [new Float64Array(size), new Float64Array(size + 2)];
  padded.set(samples);
  fft.forward(spectrum, padded);
  for (let k = 0; k < spectrum.length; k += 2) {
    const [re, im] = transfer((k / 2) * (rateHz / size));
    const [x, y] = [spectrum[k]!, spectrum[k + 1]!];
    spectrum[k] = x * re - y * im;
    spectrum[k + 1] = x * im + y * re;
  }
  fft.inverse(padded, spectrum);
  return Float32Array.from(padded.subarray(0, samples.length));
}

function later(samples: Float32Array, delay: number): Float32Array {
  const moved = new Float32Array(samples.length + 2 * delay);
  moved.set(samples, delay);
  return moved;
}

const REACH = 48;
const TAPS = 2 * REACH;
/** So many that a straight line between two is within 1e-6. */
const PHASES = 1024;

/** A Hann-windowed sinc's taps for a sample `phase` of the way from one to the next. */
function tapsAt(phase: number): Float64Array {
  return Float64Array.from({ length: TAPS }, (_, k) => {
    const x = phase + REACH - 1 - k;
    const window = 0.5 + 0.5 * Math.cos((Math.PI * x) / REACH);
    return window * (x === 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
  });
}

let table: readonly Float64Array[] | undefined;

function tapsTable(): readonly Float64Array[] {
  table ??= Array.from({ length: PHASES + 1 }, (_, phase) => tapsAt(phase / PHASES));
  return table;
}

/** As another clock samples it: windowed-sinc interpolation, under −90 dB of error to 20 kHz at 48 kHz. */
export function resampled(samples: Float32Array, rateHz: number, driftPpm: number, delaySeconds: number): Float32Array {
  if (driftPpm === 0) return later(samples, Math.round(delaySeconds * rateHz));
  const stretch = 1 + driftPpm * 1e-6;
  const length = Math.ceil((samples.length / rateHz + delaySeconds + 0.5) * stretch * rateHz);
  const padded = new Float32Array(samples.length + 2 * TAPS);
  padded.set(samples, TAPS);
  return Float32Array.from({ length }, (_, n) => {
    const at = (n / rateHz / stretch - delaySeconds) * rateHz;
    const first = Math.floor(at) - REACH + 1 + TAPS;
    if (first < 0 || first + TAPS > padded.length) return 0;
    const phase = (at - Math.floor(at)) * PHASES;
    const [below, above] = [tapsTable()[Math.floor(phase)]!, tapsTable()[Math.floor(phase) + 1]!];
    let [sum, next] = [0, 0];
    for (let k = 0; k < TAPS; k += 1) {
      sum += padded[first + k]! * below[k]!;
      next += padded[first + k]! * above[k]!;
    }
    return sum + (phase - Math.floor(phase)) * (next - sum);
  });
}

/** Two uniform numbers make one normal one (G. E. P. Box, M. E. Muller, 1958). */
function normals(seed: number): () => number {
  const random = createRandom(seed);
  const unit = () => (random() + 0.5) / 2 ** 32;
  return () => Math.sqrt(-2 * Math.log(unit())) * Math.cos(2 * Math.PI * unit());
}

/** What comes into an input, and what its file then holds of it. */
export function heardThrough(sampled: Float32Array, rateHz: number, world: Passage): Float32Array {
  const { gain = 1, noise = 0, hum, bits, clipAt = 1, seed = 7 } = world;
  const normal = normals(seed);
  const steps = bits ? 2 ** (bits - 1) : undefined;
  return sampled.map((each, n) => {
    const buzz = hum ? hum.peak * Math.sin((2 * Math.PI * hum.hz * n) / rateHz + (hum.phase ?? 0)) : 0;
    const value = Math.max(-clipAt, Math.min(clipAt, gain * each + noise * normal() + buzz));
    return steps ? Math.round(value * steps) / steps : value;
  });
}

/** What an interface's file holds of a signal that was played. */
export function recorded(signal: Float32Array, rateHz: number, passage: Passage): Float32Array {
  const { transfer, delaySeconds = 0.3137, driftPpm = 0 } = passage;
  const through = transfer ? filtered(signal, rateHz, transfer) : signal;
  return heardThrough(resampled(through, rateHz, driftPpm, delaySeconds), rateHz, passage);
}

/** A coil's resonance behind an exciter whose EMF rises with frequency up to its own pole, 1 at 1 kHz and below its peak. */
export function coilLike(peakHz: number, quality: number): (hz: number) => Complex {
  return (hz) => {
    const x = hz / peakHz;
    const [re, im] = [1 - x * x, x / quality];
    const norm = re * re + im * im;
    const [slope, turn] = [hz / 1000, hz / 3400];
    const fall = 1 + turn * turn;
    // j·slope / (1 + j·turn), over re + j·im
    const [a, b] = [(slope * turn) / fall, slope / fall];
    return [(a * re + b * im) / norm, (b * re - a * im) / norm];
  };
}
