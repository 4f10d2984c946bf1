import type { Spectrum } from "../../network/nodal-analysis.ts";
import { BODIES } from "../signal/layout.ts";
import { bodyPeak, type SignalKind } from "../signal/measuring-signal.ts";
import { TONES_HZ } from "../signal/multitone.ts";
import type { Clock } from "./clock.ts";
import { type Damage, damageOf, quietOf } from "./damage.ts";
import { clockIn } from "./find-clock.ts";
import { foretoldNoise } from "./foretold-noise.ts";
import { noiseWithLines } from "./hum-lines.ts";
import { aligned, gainMoved, isBent, meanOf, type Pass, type Transfer } from "./passes.ts";
import { playedKind } from "./played-kind.ts";
import { recordingFault } from "./recording-fault.ts";
import { lastPlan, sweepTransfer } from "./sweep-transfer.ts";
import { toneTransfer } from "./tone-transfer.ts";

/** What one channel of a recording says of what the signal went through. */
export interface Reading extends Transfer {
  readonly clock: Clock;
  /** How much faster the recorder's clock ran than the player's, millionths. */
  readonly driftPpm: number;
  /** What is wrong with each pass that was left out, by its number from 1. */
  readonly leftOut: readonly { readonly pass: number; readonly damage: Damage }[];
  /** RMS of the quiet stretch, dB re full scale. */
  readonly noiseDecibels: number;
}

const FREQUENCIES_HZ = Float64Array.from(TONES_HZ);
/** Ratios of loads are told to a tenth of this. */
const MOST_GAIN_MOVED_DECIBELS = 0.3;
/** By so much more than what noise makes of it. */
const GAIN_DEVIATIONS = 6;

type Read = (samples: Float32Array, rateHz: number, clock: Clock, index: number) => Spectrum;

/** What reads the passes of one recording. */
const READERS: Readonly<Record<SignalKind, () => Read>> = {
  sweep: () => {
    const planOf = lastPlan();
    return (...pass) => sweepTransfer(...pass, FREQUENCIES_HZ, planOf);
  },
  multitone: () => toneTransfer,
};

const rms = (samples: Float32Array) => Math.sqrt(samples.reduce((sum, each) => sum + each * each, 0) / samples.length);

function goodPasses(damages: readonly (Damage | undefined)[], path: string): number[] {
  const good = damages.flatMap((damage, index) => (damage === undefined ? [index] : []));
  if (good.length > 0) return good;
  throw recordingFault(path, damages.every((damage) => damage === "clipped") ? "clipped" : "lost");
}

function requireSteadyGain(passes: readonly Pass[], noise: Float64Array, path: string): void {
  if (passes.length < 2) return;
  const { decibels, standardError } = gainMoved(passes, noise);
  if (Math.abs(decibels) > MOST_GAIN_MOVED_DECIBELS + GAIN_DEVIATIONS * standardError) {
    const overload = decibels > 0 ? ", as where the loudest overload an input: turn its gain down too" : "";
    throw recordingFault(path, "gain", `the quietest came back ${decibels.toFixed(1)} dB off${overload}`);
  }
}

/**
 * What lies between the measuring signal as it was played and one channel as it was recorded, at `TONES_HZ`.
 * @param known the clock of the recording, where another channel of it told it already, and which signal it holds
 * @param path the field that brought the recording, for a refusal
 * @throws DATA_INSUFFICIENT naming what is wrong with the recording, and the remedy
 */
export function readRecording(
  kind: SignalKind,
  samples: Float32Array,
  sampleRateHz: number,
  path: string,
  known?: Clock,
): Reading {
  const clock = known ?? clockIn(samples, sampleRateHz, path);
  // A capacitor behind a large resistor evens a sweep out; the channel that told the clock has it as it was played.
  const played = known ? undefined : playedKind(samples, sampleRateHz, clock);
  if (played !== undefined && played !== kind) throw recordingFault(path, "kind", `a ${played}, not a ${kind}`);
  const read = READERS[kind]();
  const damages = BODIES.map((_, index) => damageOf(samples, sampleRateHz, clock, index));
  const whole = goodPasses(damages, path).map(
    (index): Pass => ({ index, ...read(samples, sampleRateHz, clock, index) }),
  );
  const quiet = quietOf(samples, sampleRateHz, clock);
  const noise = noiseWithLines(kind, FREQUENCIES_HZ, foretoldNoise(kind, BODIES[0]!, quiet, sampleRateHz));
  requireSteadyGain(whole, noise, path);
  const passes = whole.filter((pass) => pass === whole.at(-1) || !isBent(pass, whole.at(-1)!, FREQUENCIES_HZ, noise));
  const used = new Set(passes.map(({ index }) => index));
  const share = bodyPeak(BODIES[0]!) / Math.hypot(...passes.map(({ index }) => bodyPeak(BODIES[index]!)));
  return {
    ...meanOf(
      aligned(passes, FREQUENCIES_HZ, noise),
      FREQUENCIES_HZ,
      noise.map((each) => each * share),
    ),
    leftOut: damages.flatMap((damage, i) => (used.has(i) ? [] : [{ pass: i + 1, damage: damage ?? "clipped" }])),
    clock,
    driftPpm: 1e6 * (clock.stretch - 1),
    noiseDecibels: 20 * Math.log10(Math.max(1e-9, rms(quiet))),
  };
}
