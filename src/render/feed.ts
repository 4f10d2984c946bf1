import { testSignal } from "../audio/signals.ts";
import { decodeWav } from "../audio/wav-decode.ts";
import type { Build } from "../build-file/schema.ts";
import { faultAt } from "../errors.ts";
import { coilPlaces, stringSetOf } from "../response/coil-places.ts";
import type { CoilSource } from "../response/pickup-elements.ts";
import { phraseSignals } from "./phrase-cache.ts";
import { DEFAULT_STRING_AGE, type Playing } from "./playing.ts";
import { isTestSignal } from "./signals.ts";

/** A built-in signal by name, played in some way if it is a phrase. */
export interface NamedSignal extends Playing {
  readonly name: string;
  readonly sampleRateHz: number;
}

/** That, or the bytes of a WAV file. */
export type SignalSource = NamedSignal | { readonly file: Uint8Array };

/**
 * What goes into the filters. `drive` has the channels of a dry sound, each of which drives every coil alike; `coils` has a signal
 * of each coil's own, in the order of the sources: a phrase with sign and output in it.
 */
export interface Feed {
  readonly sampleRateHz: number;
  readonly drive: readonly Float32Array[];
  readonly coils: readonly Float32Array[];
}

/** Samples of a channel of what is rendered, but for the filters' tails. */
export function lengthOf({ drive, coils }: Feed): number {
  return Math.max(0, ...[...drive, ...coils].map((signal) => signal.length));
}

/** Channels of what is rendered. */
export function channelCountOf({ drive }: Feed): number {
  return Math.max(1, drive.length);
}

/** @throws PresolderError SOUND_UNUSABLE for a harness that has no pickup yet */
export function expectPickups(sources: readonly CoilSource[]): void {
  if (sources.length > 0) return;
  const message = 'there is no pickup yet, so there is nothing to hear; expected a part of kind "pickup"';
  throw faultAt("SOUND_UNUSABLE", "build.parts", message);
}

/**
 * @throws PresolderError for a build without pickups, a file that is no usable WAV, an unknown signal, a rate out of range
 */
export function feedOf(
  build: Build,
  sources: readonly CoilSource[],
  signal: SignalSource,
  checkpoint?: () => void,
): Feed {
  expectPickups(sources);
  if ("name" in signal && !isTestSignal(signal.name)) {
    const { name, sampleRateHz, hand, strings: age = DEFAULT_STRING_AGE } = signal;
    const strings = { ...stringSetOf(build), age };
    const coils = phraseSignals(name, coilPlaces(build, sources), strings, sampleRateHz, hand, checkpoint);
    return { sampleRateHz, drive: [], coils };
  }
  const sound = "file" in signal ? decodeWav(signal.file) : testSignal(signal.name as never, signal.sampleRateHz);
  return { sampleRateHz: sound.sampleRateHz, drive: sound.channels, coils: [] };
}
