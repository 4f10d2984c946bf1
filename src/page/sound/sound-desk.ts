import { transfer } from "comlink";
import { type Channels, type FilterRequest, PhraseRenderer, type PhraseRequest } from "./phrase-renderer.ts";

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
}
