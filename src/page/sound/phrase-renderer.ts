import type { Sound } from "../../audio/sound.ts";
import { BoundedMap } from "../../bounded-map.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, parseSettings, type RawSettings, type Settings } from "../../build-file/settings.ts";
import { amplitudeFromDecibels } from "../../decibels.ts";
import type { Convolver } from "../../filter/convolver.ts";
import { impulseResponse } from "../../filter/impulse-response.ts";
import { createQuickConvolver } from "../../filter/quick-convolve.ts";
import { type Feed, feedOf } from "../../render/feed.ts";
import { filtersIn } from "../../render/filters.ts";
import { createLevelling, INAUDIBLE, isUnder, measure } from "../../render/levels.ts";
import type { Playing } from "../../render/playing.ts";
import { ResponseEngine } from "../../response/engine.ts";
import type { AskedChain } from "./chain-key.ts";
import { Chains } from "./chains.ts";
import { GuardNoise, type NoiseHeard } from "./guard-noise.ts";

/** A phrase or test signal as one guard gives it in a setting. */
export interface PhraseRequest {
  readonly build: Build;
  readonly settings: RawSettings;
  /** By the service's name for it. */
  readonly signal: string;
  /** For a phrase. */
  readonly playing: Playing;
  readonly levelMatched: boolean;
  readonly sampleRateHz: number;
  /** Undefined for the jack itself. */
  readonly through?: AskedChain | undefined;
  /** Off where left out. */
  readonly noise?: NoiseHeard;
}

export type FilterRequest = Pick<PhraseRequest, "build" | "settings" | "sampleRateHz">;

export interface NoiseRequest extends FilterRequest {
  readonly noise: NoiseHeard;
}

/** Samples of each channel; ±1 is full scale. */
export type Channels = readonly Float32Array<ArrayBuffer>[];

interface Guard {
  readonly engine: ResponseEngine;
  readonly controls: Controls;
}

/** A phrase as the coils of a guard hear it, ready to be filtered. */
interface Instrument {
  readonly convolvers: readonly Convolver[];
  /** The most taps that its filters may have. */
  readonly longest: number;
}

/** The guard on the bench and the one beside it, with what they were a step ago. */
const MAX_GUARDS = 4;
const MAX_INSTRUMENTS = 3;
/** Most guards' filters are shorter at 48 kHz; for a longer one the convolver is made anew. */
const USUAL_TAPS = 4096;

function convolversOf({ drive, coils }: Feed, longest: number): Convolver[] {
  const inputs = drive.length > 0 ? drive.map((channel) => [channel, ...coils]) : [coils];
  return inputs.map((channel) => createQuickConvolver(channel, longest));
}

/** Renders phrases as the service does, keeping what other settings and values leave as it is. */
export class PhraseRenderer {
  readonly chains = new Chains();
  /** Brought before a render with noise. */
  readonly noise = new GuardNoise();
  readonly #guards = new BoundedMap<string, Guard>(MAX_GUARDS);
  /** By the coils' own signals, which are the same as long as nothing moves them, or by the test signal's name. */
  readonly #instruments = new BoundedMap<unknown, Instrument>(MAX_INSTRUMENTS);

  /** @throws PresolderError for an unknown signal, a rate out of range settings that the guard has not or a cabinet without use */
  render(request: PhraseRequest): Channels {
    const { build, settings: raw, levelMatched, sampleRateHz, noise = "off", through } = request;
    const { engine, controls } = this.#guard(build);
    const { feed, key } = this.#feed(request);
    const hasDrive = feed.drive.length > 0;
    const plan = { engine, sampleRateHz, hasDrive, hasCoils: feed.coils.length > 0 };
    const settings = parseSettings(controls, raw);
    const { taps } = filtersIn(plan, settings);
    const longest = Math.max(1, ...taps.map((each) => each.length));
    const { convolvers } = this.#instrument(feed, key, longest);
    const jack: Sound = { sampleRateHz, channels: convolvers.map((convolver) => convolver.render(taps)) };
    const isSilent = noise !== "off" && isUnder(jack.channels, INAUDIBLE);
    this.noise.addTo(jack.channels, { build, settings, sampleRateHz }, noise);
    const sound = this.chains.through(through, jack);
    if (levelMatched && !isSilent) matchLevel(sound);
    return sound.channels as Channels;
  }

  /** The taps of a setting's whole filter, for a sound that drives every coil alike. @throws as `render` */
  impulse({ build, settings, sampleRateHz }: FilterRequest): Float32Array<ArrayBuffer> {
    const { engine, controls } = this.#guard(build);
    const transfers = engine.transfersIn(parseSettings(controls, settings) as Settings);
    const { taps } = impulseResponse((frequenciesHz) => transfers.total(frequenciesHz), sampleRateHz);
    return Float32Array.from(taps);
  }

  /** Hum and hiss of a setting, each to be repeated without end. @throws as `render` */
  noisePeriods({ build, settings, sampleRateHz, noise }: NoiseRequest): Channels {
    const { controls } = this.#guard(build);
    return this.noise.periods({ build, settings: parseSettings(controls, settings), sampleRateHz }, noise);
  }

  #guard(build: Build): Guard {
    const key = JSON.stringify(build);
    const known = this.#guards.get(key);
    if (known) return known;
    const guard = { engine: new ResponseEngine(build, { isKept: true }), controls: new Controls(build) };
    this.#guards.set(key, guard);
    return guard;
  }

  #feed({ build, signal, playing, sampleRateHz }: PhraseRequest): {
    feed: Feed;
    key: unknown;
  } {
    const feed = feedOf(build, this.#guard(build).engine.sources, { name: signal, sampleRateHz, ...playing });
    return { feed, key: feed.coils.length > 0 ? feed.coils : `${signal} ${sampleRateHz}` };
  }

  #instrument(feed: Feed, key: unknown, taps: number): Instrument {
    const known = this.#instruments.get(key);
    if (known && known.longest >= taps) return known;
    const longest = Math.max(USUAL_TAPS, 2 ** Math.ceil(Math.log2(taps)));
    const instrument = { convolvers: convolversOf(feed, longest), longest };
    this.#instruments.set(key, instrument);
    return instrument;
  }
}

/** Brings a sound to the loudness that all matched previews have, in place. */
function matchLevel(sound: Sound): void {
  const measured = measure(sound, true);
  const levelling = createLevelling("matched", "float32");
  levelling.add(measured);
  const gain = amplitudeFromDecibels(levelling.gainOf(measured));
  for (const samples of sound.channels) for (let n = 0; n < samples.length; n++) samples[n]! *= gain;
}
