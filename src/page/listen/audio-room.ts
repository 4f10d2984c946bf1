import type { RawSettings } from "../../build-file/settings.ts";
import type { Channels } from "../sound/phrase-renderer.ts";
import type { SoundEngine } from "../sound/sound-engine.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";
import { askedChain } from "./chain/asked-chain.ts";
import type { Heard } from "./heard.ts";
import { matchedGain, renderThrough, scaledBuffer } from "./local-render.ts";
import { ownRecording } from "./own-recordings.ts";

/** The service's usual rate: phrases can be rendered before anybody may open a sound device. */
const SAMPLE_RATE_HZ = 48_000;

function bufferOf(channels: Channels, sampleRate: number): AudioBuffer {
  const buffer = new AudioBuffer({ length: channels[0]!.length, numberOfChannels: channels.length, sampleRate });
  for (const [index, samples] of channels.entries()) buffer.copyToChannel(samples, index);
  return buffer;
}

/** The page's audio contexts and the sounds made for them. */
export class AudioRoom {
  readonly #store: AppStore;
  readonly #engine: SoundEngine;
  #context: AudioContext | undefined;
  #liveContext: AudioContext | undefined;

  constructor(store: AppStore, engine: SoundEngine) {
    this.#store = store;
    this.#engine = engine;
  }

  /** Made at the first wish to hear something: browsers let no page open its sound before that. */
  get context(): AudioContext {
    this.#context ??= new AudioContext({ sampleRate: SAMPLE_RATE_HZ });
    return this.#context;
  }

  /** At the device's own rate, without a converter's delay between strings and ears. */
  get liveContext(): AudioContext {
    this.#liveContext ??= new AudioContext({ latencyHint: "interactive" });
    return this.#liveContext;
  }

  /** Renders what would sound if somebody pressed play, and keeps it. */
  async prepare({ reading, settings }: Heard): Promise<void> {
    const { signal, ownSound, levelMatched } = this.#store.state;
    if (signal && !ownSound) await this.#phrase(reading, settings, levelMatched);
  }

  /** The chosen sound as a setting gives it: a phrase or one's own recording. */
  async soundOf(reading: Reading, settings: RawSettings, levelMatched: boolean): Promise<AudioBuffer> {
    const { ownSound } = this.#store.state;
    if (ownSound) return this.#ownSoundOf(ownSound.file, reading, settings, levelMatched);
    return bufferOf(await this.#phrase(reading, settings, levelMatched), SAMPLE_RATE_HZ);
  }

  /** The filter of a setting at a context's own rate. */
  async impulseFor(context: BaseAudioContext, { reading, settings }: Heard): Promise<AudioBuffer> {
    const { sampleRate: sampleRateHz } = context;
    const taps = await this.#engine.impulse({ build: reading.build, settings, sampleRateHz });
    const buffer = new AudioBuffer({ length: taps.length, sampleRate: sampleRateHz });
    buffer.copyToChannel(taps, 0);
    return buffer;
  }

  /** Hum and hiss of a setting at a context's own rate, each to be repeated without end; none where they are off. */
  async noiseFor({ sampleRate: sampleRateHz }: BaseAudioContext | AudioBuffer, heard: Heard): Promise<AudioBuffer[]> {
    const { noise } = this.#store.state;
    const request = { build: heard.reading.build, settings: heard.settings, sampleRateHz, noise };
    return (await this.#engine.noise(request)).map((period) => bufferOf([period], sampleRateHz));
  }

  /** @throws Error naming what is wrong with the chosen cabinet */
  async checkCabinet(): Promise<void> {
    const chain = await askedChain(this.#store.state);
    if (chain) await this.#engine.speaker(chain, SAMPLE_RATE_HZ);
  }

  /** The last filter of the chosen chain at a context's own rate; undefined where nothing is behind the jack. */
  async speakerFor({ sampleRate }: BaseAudioContext): Promise<AudioBuffer | undefined> {
    const chain = await askedChain(this.#store.state);
    if (!chain) return undefined;
    const taps = await this.#engine.speaker(chain, sampleRate);
    const buffer = new AudioBuffer({ length: taps.length, sampleRate });
    buffer.copyToChannel(taps, 0);
    return buffer;
  }

  /** One's own recording through a setting's filter, with the noise of the setting, and on through the chosen chain. */
  async recordingThrough(recording: AudioBuffer, impulse: AudioBuffer, heard: Heard): Promise<AudioBuffer> {
    const jack = await renderThrough(recording, impulse, await this.noiseFor(recording, heard));
    const chain = await askedChain(this.#store.state);
    if (!chain) return jack;
    const channels = Array.from({ length: jack.numberOfChannels }, (_, index) => jack.getChannelData(index));
    return bufferOf(await this.#engine.through(chain, jack.sampleRate, channels), jack.sampleRate);
  }

  async #phrase({ build }: Reading, settings: RawSettings, levelMatched: boolean): Promise<Channels> {
    const { signal, hand, stringAge: strings, noise } = this.#store.state;
    return this.#engine.phrase({
      build,
      settings,
      signal,
      playing: { hand, strings },
      levelMatched,
      sampleRateHz: SAMPLE_RATE_HZ,
      through: await askedChain(this.#store.state),
      noise,
    });
  }

  async #ownSoundOf(file: File, reading: Reading, settings: RawSettings, matched: boolean): Promise<AudioBuffer> {
    const [sound, impulse] = await Promise.all([
      ownRecording(this.context, file),
      this.impulseFor(this.context, { reading, settings }),
    ]);
    const rendered = await this.recordingThrough(sound, impulse, { reading, settings });
    return matched ? scaledBuffer(rendered, matchedGain(rendered)) : rendered;
  }
}
