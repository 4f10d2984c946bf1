import type { Spectrum } from "../../network/nodal-analysis.ts";
import { BODIES } from "../signal/layout.ts";
import { bodyPeak } from "../signal/measuring-signal.ts";
import { PERIOD_SECONDS, TONES_HZ, toneAmplitude, tonePhase } from "../signal/multitone.ts";
import { type Clock, playedSeconds, recordedSeconds } from "./clock.ts";

/** The first period lets what the start excited ring out. */
export const SETTLED_SECONDS = PERIOD_SECONDS;

/** Turns are exact again every so many samples. */
const RENEWED_EVERY = 1024;

/** The projection of `samples` on a tone; under a Hann window over whole periods every other tone falls on one of its zeros. */
function phasor(samples: Float64Array, angleStep: number, angle: number) {
  const [turnRe, turnIm] = [Math.cos(angleStep), Math.sin(angleStep)];
  let [re, im, cos, sin] = [0, 0, 0, 0];
  for (let n = 0; n < samples.length; n += 1) {
    if (n % RENEWED_EVERY === 0) [cos, sin] = [Math.cos(angle + angleStep * n), Math.sin(angle + angleStep * n)];
    re += samples[n]! * sin;
    im += samples[n]! * cos;
    const next = cos * turnRe - sin * turnIm;
    sin = sin * turnRe + cos * turnIm;
    cos = next;
  }
  return { re, im };
}

/** As `sweepTransfer`, at the tones of a multitone: `TONES_HZ`. */
export function toneTransfer(samples: Float32Array, sampleRateHz: number, clock: Clock, index: number): Spectrum {
  const body = BODIES[index]!;
  const from = recordedSeconds(clock, index, body.from + SETTLED_SECONDS);
  const length = (body.seconds - SETTLED_SECONDS) * clock.stretch * sampleRateHz;
  const first = Math.ceil(from * sampleRateHz);
  const window = (n: number) => (1 - Math.cos((2 * Math.PI * (n + first - from * sampleRateHz)) / length)) / length;
  const read = Float64Array.from({ length: Math.floor(length) }, (_, n) => window(n) * (samples[first + n] ?? 0));
  const start = playedSeconds(clock, index, first / sampleRateHz) - body.from;
  const size = 2 / (bodyPeak(body) * toneAmplitude());
  const phasors = TONES_HZ.map((hz, k) => {
    const step = (2 * Math.PI * hz) / (sampleRateHz * clock.stretch);
    return phasor(read, step, 2 * Math.PI * hz * start + tonePhase(k));
  });
  return {
    re: Float64Array.from(phasors, ({ re }) => size * re),
    im: Float64Array.from(phasors, ({ im }) => size * im),
  };
}
