import { transfer } from "comlink";
import type { AskedChain } from "./chain-key.ts";
import {
  type Channels,
  type FilterRequest,
  type NoiseRequest,
  PhraseRenderer,
  type PhraseRequest,
} from "./phrase-renderer.ts";

/** Renders beside the page's own thread; samples are handed over, not copied. */
export class SoundDesk {
  readonly #renderer = new PhraseRenderer();

  async render(request: PhraseRequest): Promise<Channels> {
    await this.#renderer.noise.bring(request.noise ?? "off");
    const channels = this.#renderer.render(request);
    return transfer(
      channels,
      channels.map((samples) => samples.buffer),
    );
  }

  impulse(request: FilterRequest): Float32Array<ArrayBuffer> {
    const taps = this.#renderer.impulse(request);
    return transfer(taps, [taps.buffer]);
  }

  /** Hum and hiss of a setting, each to be repeated without end. */
  async noise(request: NoiseRequest): Promise<Channels> {
    await this.#renderer.noise.bring(request.noise);
    const periods = this.#renderer.noisePeriods(request);
    return transfer(
      periods,
      periods.map((samples) => samples.buffer),
    );
  }

  /** The taps of a chain's speaker. */
  speaker(asked: AskedChain, sampleRateHz: number): Float32Array<ArrayBuffer> {
    const taps = this.#renderer.chains.speaker(asked, sampleRateHz);
    return transfer(taps, [taps.buffer]);
  }

  /** A sound at the jack through a chain. */
  through(asked: AskedChain, sampleRateHz: number, jack: Channels): Channels {
    const channels = this.#renderer.chains.through(asked, { sampleRateHz, channels: jack }).channels as Channels;
    return transfer(
      channels,
      channels.map((samples) => samples.buffer),
    );
  }
}
