import { BODIES, type Body, MARKS, SIGNAL_PEAK, SIGNAL_SECONDS } from "./layout.ts";
import { markAt } from "./mark.ts";
import { multitonePeriod } from "./multitone.ts";
import { sweepAt } from "./sweep.ts";

export const SIGNAL_KINDS = ["sweep", "multitone"] as const;
/** A sweep stands above hiss and shows distortion apart; tones stand above hum and need no window. */
export type SignalKind = (typeof SIGNAL_KINDS)[number];

/** The level of a body, of full scale. */
export function bodyPeak({ decibels }: Body): number {
  return SIGNAL_PEAK * 10 ** (decibels / 20);
}

function addMarks(samples: Float32Array, sampleRateHz: number): void {
  for (const from of MARKS) {
    for (let n = Math.floor(from * sampleRateHz); n < samples.length; n += 1) {
      const seconds = n / sampleRateHz - from;
      if (seconds > 1) break;
      samples[n]! += SIGNAL_PEAK * markAt(seconds);
    }
  }
}

type Sampled = (body: Body) => (n: number) => number;

const sweepBody =
  (sampleRateHz: number): Sampled =>
  (body) =>
  (n) =>
    sweepAt(n / sampleRateHz - body.from, body.seconds);

/** Tones begin and end at once: what that excites has rung out before the first period that is read. */
function multitoneBody(sampleRateHz: number): Sampled {
  const period = multitonePeriod(sampleRateHz);
  return (body) => {
    const first = Math.round(body.from * sampleRateHz);
    return (n) => period[(n - first) % period.length]!;
  };
}

const BODY_MAKERS: Readonly<Record<SignalKind, (sampleRateHz: number) => Sampled>> = {
  sweep: sweepBody,
  multitone: multitoneBody,
};

/**
 * The measuring signal as samples within ±0.5; the same every time.
 * @param sampleRateHz a whole number from 44 100 up
 */
export function measuringSignal(kind: SignalKind, sampleRateHz: number): Float32Array {
  const samples = new Float32Array(Math.round(SIGNAL_SECONDS * sampleRateHz));
  addMarks(samples, sampleRateHz);
  const sampled = BODY_MAKERS[kind](sampleRateHz);
  for (const body of BODIES) {
    const at = sampled(body);
    const last = Math.round((body.from + body.seconds) * sampleRateHz);
    for (let n = Math.round(body.from * sampleRateHz); n < last; n += 1) samples[n]! += bodyPeak(body) * at(n);
  }
  return samples;
}
