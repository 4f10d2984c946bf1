import type { Spectrum } from "../../network/nodal-analysis.ts";
import { BODIES } from "../signal/layout.ts";
import { bodyPeak } from "../signal/measuring-signal.ts";
import { PERIOD_SECONDS, TONES_HZ, toneAmplitude, tonePhase } from "../signal/multitone.ts";
import { type Clock, playedSeconds, recordedSeconds } from "./clock.ts";
import { projection } from "./projection.ts";

/** The first period lets what the start excited ring out. */
export const SETTLED_SECONDS = PERIOD_SECONDS;

/**
 * As `sweepTransfer`, at the tones of a multitone, `TONES_HZ`: under a Hann window over whole periods each falls on
 * the zeros of all others.
 */
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
    return projection(read, step, 2 * Math.PI * hz * start + tonePhase(k));
  });
  return {
    re: Float64Array.from(phasors, ({ onSine }) => size * onSine),
    im: Float64Array.from(phasors, ({ onCosine }) => size * onCosine),
  };
}
