import { BoundedMap } from "../../bounded-map.ts";
import { WorkerLink } from "../engine/worker-link.ts";
import { type AskedChain, keyOf } from "./chain-key.ts";
import type { Channels, FilterRequest, NoiseRequest, PhraseRequest } from "./phrase-renderer.ts";
import type { SoundDesk } from "./sound-desk.ts";

/** A row of the grid and what was heard before; anything else is rendered again in less time than it takes to notice. */
const MAX_SOUNDS = 16;

/** Phrases and filters, rendered in the browser; the worker starts with the first wish for one. */
export class SoundEngine {
  readonly #link = new WorkerLink<SoundDesk>("sound-worker");
  readonly #sounds = new BoundedMap<string, Promise<Channels>>(MAX_SOUNDS);

  /** A phrase in a setting; asked again soon, it is not rendered again. @throws Error with what the renderer refuses */
  phrase(request: PhraseRequest): Promise<Channels> {
    const key = JSON.stringify({ ...request, through: keyOf(request.through) });
    const known = this.#sounds.get(key);
    if (known) return known;
    const sound = this.#link.ask((desk) => desk.render(request));
    this.#sounds.set(key, sound);
    // A refusal must not be remembered.
    sound.catch(() => this.#sounds.delete(key));
    return sound;
  }

  /** The taps of a setting's whole filter. @throws Error with what the renderer refuses */
  impulse(request: FilterRequest): Promise<Float32Array<ArrayBuffer>> {
    return this.#link.ask((desk) => desk.impulse(request));
  }

  /** Hum and hiss of a setting, each to be repeated without end; none where they are off. */
  async noise(request: NoiseRequest): Promise<Channels> {
    return request.noise === "off" ? [] : this.#link.ask((desk) => desk.noise(request));
  }

  /** The taps of a chain's speaker. @throws Error naming what is wrong with a cabinet */
  speaker(asked: AskedChain, sampleRateHz: number): Promise<Float32Array<ArrayBuffer>> {
    return this.#link.ask((desk) => desk.speaker(asked, sampleRateHz));
  }

  /** A sound at the jack through a chain. @throws Error naming what is wrong with a cabinet */
  through(asked: AskedChain, sampleRateHz: number, jack: Channels): Promise<Channels> {
    return this.#link.ask((desk) => desk.through(asked, sampleRateHz, jack));
  }
}
