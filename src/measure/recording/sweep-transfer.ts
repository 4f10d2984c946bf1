import { createRealFft, type RealFft } from "../../filter/real-fft.ts";
import type { Spectrum } from "../../network/nodal-analysis.ts";
import { BODIES, TAIL_SECONDS } from "../signal/layout.ts";
import { bodyPeak } from "../signal/measuring-signal.ts";
import { sweepAt } from "../signal/sweep.ts";
import { type Clock, playedSeconds, recordedSeconds } from "./clock.ts";
import { projection } from "./projection.ts";

/** What of the impulse response is kept: a pickup rings for milliseconds, and a distorted sweep's harmonics come 0.38 s before. */
const BEFORE_SECONDS = 0.05;
const AFTER_SECONDS = 0.2;
const FADE_SECONDS = 0.04;
/** Of the sweep's strongest bin; what was hardly played is not divided by. */
const FLOOR = 1e-3;

function pass(samples: Float32Array, sampleRateHz: number, clock: Clock, index: number) {
  const body = BODIES[index]!;
  const first = Math.floor(recordedSeconds(clock, index, body.from - BEFORE_SECONDS) * sampleRateHz);
  const last = Math.ceil(recordedSeconds(clock, index, body.from + body.seconds + TAIL_SECONDS) * sampleRateHz);
  const size = 2 ** Math.ceil(Math.log2(last - first));
  const heard = new Float64Array(size);
  const played = new Float64Array(size);
  const peak = bodyPeak(body);
  for (let n = first; n < last; n += 1) {
    heard[n - first] = samples[n] ?? 0;
    played[n - first] = peak * sweepAt(playedSeconds(clock, index, n / sampleRateHz) - body.from, body.seconds);
  }
  return { heard, played, size };
}

/** Fades between whole and nothing over FADE_SECONDS at either end. */
function gate(seconds: number): number {
  const left = (seconds + BEFORE_SECONDS) / FADE_SECONDS;
  const right = (AFTER_SECONDS - seconds) / FADE_SECONDS;
  const part = Math.max(0, Math.min(1, left, right));
  return 0.5 - 0.5 * Math.cos(Math.PI * part);
}

/** The gate's square over time, in seconds. */
export function gateEnergySeconds(): number {
  // Of a half-cosine fade the square comes to 3/8.
  return AFTER_SECONDS + BEFORE_SECONDS - 2 * FADE_SECONDS + (2 * FADE_SECONDS * 3) / 8;
}

export type Plans = (size: number) => RealFft;

/** Passes are of one length, and a plan's tables take as long to build as a transform with it. */
export function lastPlan(): Plans {
  let plan: RealFft | undefined;
  return (size) => {
    if (plan?.size !== size) plan = createRealFft(size);
    return plan;
  };
}

function impulseResponse({ heard, played, size }: ReturnType<typeof pass>, planOf: Plans): Float64Array {
  const fft = planOf(size);
  const [y, x] = [new Float64Array(size + 2), new Float64Array(size + 2)];
  fft.forward(y, heard);
  fft.forward(x, played);
  let top = 0;
  for (let k = 0; k < x.length; k += 2) top = Math.max(top, x[k]! ** 2 + x[k + 1]! ** 2);
  const floor = FLOOR ** 2 * top;
  for (let k = 0; k < x.length; k += 2) {
    const [yr, yi, xr, xi] = [y[k]!, y[k + 1]!, x[k]!, x[k + 1]!];
    const under = Math.max(floor, xr * xr + xi * xi);
    y[k] = (yr * xr + yi * xi) / under;
    y[k + 1] = (yi * xr - yr * xi) / under;
  }
  fft.inverse(heard, y);
  return heard;
}

/**
 * What stands between the signal as played and one pass as recorded, at `frequenciesHz` of the player's clock. Distortion comes
 * before the impulse response and is cut off with it (A. Farina, AES 108, 2000).
 * @param index of the pass, 0 to 2
 * @param planOf the transform of a size, for whoever reads several passes
 */
export function sweepTransfer(
  samples: Float32Array,
  sampleRateHz: number,
  clock: Clock,
  index: number,
  frequenciesHz: Float64Array,
  planOf: Plans = createRealFft,
): Spectrum {
  const response = impulseResponse(pass(samples, sampleRateHz, clock, index), planOf);
  const first = -Math.ceil(BEFORE_SECONDS * sampleRateHz);
  const kept = Float64Array.from({ length: Math.ceil(AFTER_SECONDS * sampleRateHz) - first + 1 }, (_, k) => {
    const n = first + k;
    return gate(n / sampleRateHz) * response[(n + response.length) % response.length]!;
  });
  const found = Array.from(frequenciesHz, (hz) => {
    const step = (2 * Math.PI * hz) / (sampleRateHz * clock.stretch);
    return projection(kept, step, first * step);
  });
  return {
    re: Float64Array.from(found, ({ onCosine }) => onCosine),
    im: Float64Array.from(found, ({ onSine }) => -onSine),
  };
}
