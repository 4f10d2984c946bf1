import { powerDecibels, powerFromDecibels } from "../../decibels.ts";
import type { Sound } from "../sound.ts";
import { clippedAt } from "./clipping.ts";
import { FRAME_SECONDS, type Frames, framesOf, runningMeans } from "./frames.ts";
import { findPlucks } from "./plucks.ts";
import {
  at,
  expectApart,
  LEVEL_FROM_SECONDS,
  LEVEL_TO_SECONDS,
  type StringLevelsQuestion,
  timesPlucked,
  unusable,
} from "./usable-plucks.ts";

export interface PluckLevel {
  /** Seconds. */
  readonly starts: number;
  readonly ends: number;
  readonly level: number;
  readonly rms: number;
}

export interface StringLevel {
  /** From 1, the highest. */
  readonly string: number;
  /** Median of its plucks, in LUFS: K-weighted, ungated, the noise's share taken out. */
  readonly level: number;
  /** Median of its plucks, in dB re a full-scale constant: plain, nothing taken out. */
  readonly rms: number;
  readonly plucks: readonly PluckLevel[];
}

export interface StringLevels {
  readonly strings: readonly StringLevel[];
  /** LUFS of the quietest fifth of a second. */
  readonly noise: number;
  readonly seconds: number;
}

/** So that a sine of 997 Hz at full scale reads −3.01 LUFS in one channel (ITU-R BS.1770). */
const LUFS_OFFSET_DB = -0.691;
const QUIET_SECONDS = 0.2;
/** What rings under the next pluck this far down adds 0.2 dB to it. */
const RINGING_BELOW = powerFromDecibels(-13);
/** Beside noise nearer than this a level is the noise's. */
const NOISE_BELOW = powerFromDecibels(-6);

function loudestChannel({ channels }: Sound): Float32Array {
  const energies = channels.map((samples) => samples.reduce((sum, sample) => sum + sample * sample, 0));
  return channels[energies.indexOf(Math.max(...energies))]!;
}

function quietest({ weighted }: Frames): number {
  const mean = runningMeans(weighted);
  const width = Math.round(QUIET_SECONDS / FRAME_SECONDS);
  let least = Number.POSITIVE_INFINITY;
  for (let frame = 0; frame + width <= weighted.length; frame++) least = Math.min(least, mean(frame, frame + width));
  return Number.isFinite(least) ? least : 0;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

function plainPower(samples: Float32Array, from: number, to: number): number {
  let energy = 0;
  for (let n = from; n < to; n++) energy += samples[n]! ** 2;
  return energy / (to - from);
}

/** One pluck's level. @throws PresolderError SOUND_UNUSABLE where noise or the string before drowns it */
function pluckLevel(
  samples: Float32Array,
  sampleRateHz: number,
  mean: (from: number, to: number) => number,
  noise: number,
  start: number,
): PluckLevel {
  const [starts, ends] = [start + LEVEL_FROM_SECONDS, start + LEVEL_TO_SECONDS];
  const frame = (seconds: number) => Math.round(seconds / FRAME_SECONDS);
  const power = mean(frame(starts), frame(ends));
  if (noise > power * NOISE_BELOW)
    throw unusable(
      `the pluck at ${at(start)} stands less than 6 dB over the noise; expected more: turn the guitar up, sit farther from lamps and transformers, or record closer to full scale`,
    );
  const before = mean(frame(start - 0.03), frame(start - 0.01)) - noise;
  if (before > power * RINGING_BELOW)
    throw unusable(
      `what was plucked before still rings at ${at(start)}; expected it 13 dB under the next: damp each string before the next is plucked`,
    );
  const rms = plainPower(samples, Math.round(starts * sampleRateHz), Math.round(ends * sampleRateHz));
  return { starts, ends, level: powerDecibels(power - noise) + LUFS_OFFSET_DB, rms: powerDecibels(rms) };
}

/**
 * Levels of open strings plucked one after another, each once or several times in a row. K-weighted, since equal loudness is what
 * is sought: plain levels would count a wound string's fundamental, which is hardly heard, as much as its partials.
 * @throws PresolderError SOUND_UNUSABLE under `signal`: clipped, too short, too few or too many plucks, plucks that overlap,
 * noise
 */
export function stringLevels(sound: Sound, question: StringLevelsQuestion): StringLevels {
  const samples = loudestChannel(sound);
  const { sampleRateHz } = sound;
  const clipped = clippedAt(samples);
  if (clipped !== undefined)
    throw unusable(`clipped at ${at(clipped / sampleRateHz)}; expected no flat tops: turn the recording level down`);
  const frames = framesOf(samples, sampleRateHz);
  const starts = findPlucks(frames);
  const times = timesPlucked(starts, question);
  expectApart(starts, samples.length / sampleRateHz);
  const noise = quietest(frames);
  const mean = runningMeans(frames.weighted);
  const plucks = starts.map((start) => pluckLevel(samples, sampleRateHz, mean, noise, start));
  const strings = Array.from({ length: question.strings }, (_, index) => {
    const string = question.order === "low-to-high" ? question.strings - index : index + 1;
    const own = plucks.slice(index * times, (index + 1) * times);
    return {
      string,
      level: median(own.map(({ level }) => level)),
      rms: median(own.map(({ rms }) => rms)),
      plucks: own,
    };
  });
  strings.sort((a, b) => a.string - b.string);
  return { strings, noise: powerDecibels(noise) + LUFS_OFFSET_DB, seconds: samples.length / sampleRateHz };
}
