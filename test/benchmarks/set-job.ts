import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { Controls, type Settings } from "../../src/build-file/settings.ts";
import { expandSweep, type RawSweep } from "../../src/build-file/sweep.ts";
import type { Feed } from "../../src/render/feed.ts";
import { phraseSignals } from "../../src/render/phrase-cache.ts";
import { coilPlaces, stringSetOf } from "../../src/response/coil-places.ts";
import { ResponseEngine } from "../../src/response/engine.ts";

/** A set of previews to render, as plain data. */
export interface SetJob {
  readonly build: object;
  readonly sweep?: RawSweep;
  readonly seconds: number;
  readonly sampleRateHz: number;
  /** Channels of a file that drives all coils alike; without it each coil has a signal of its own. */
  readonly fileChannels?: number;
}

export interface SetWork {
  readonly build: Build;
  readonly settings: readonly Settings[];
  readonly feed: Feed;
}

const PHRASES = ["strum", "double-stops", "arpeggio", "bend"];

/** Phrases one after the other, over and over, as each coil hears them. */
function coilSignals(build: Build, { seconds, sampleRateHz }: SetJob): Float32Array[] {
  const { sources } = new ResponseEngine(build);
  const places = coilPlaces(build, sources);
  const strings = stringSetOf(build);
  const length = Math.round(seconds * sampleRateHz);
  const signals = sources.map(() => new Float32Array(length));
  for (let at = 0, turn = 0; at < length; turn++) {
    const phrase = phraseSignals(PHRASES[turn % PHRASES.length]!, places, strings, sampleRateHz);
    signals.forEach((signal, coil) => void signal.set(phrase[coil]!.subarray(0, length - at), at));
    at += phrase[0]!.length;
  }
  return signals;
}

export function workOf(job: SetJob): SetWork {
  const build = readBuild(job.build);
  const { sampleRateHz, fileChannels } = job;
  const coils = coilSignals(build, job);
  const drive = Array.from({ length: fileChannels ?? 0 }, (_, channel) => coils[channel % coils.length]!);
  const feed = fileChannels ? { sampleRateHz, drive, coils: [] } : { sampleRateHz, drive: [], coils };
  return { build, settings: expandSweep(new Controls(build), job.sweep), feed };
}
