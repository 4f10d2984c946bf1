import type { RawSettings } from "../../build-file/settings.ts";
import type { PreviewRequest } from "../../contract/preview.ts";
import { postForBytes } from "../server/client.ts";
import type { Reading } from "../state/reading.ts";

export interface PhraseChoice {
  readonly signal: string;
  readonly levelMatched: boolean;
}

/** Room for a whole set: five positions by eleven tones. */
const MAX_SOUNDS = 60;

/** Phrases as the service renders them, kept while the page is open so that a cell heard once plays at once. */
export class PreviewSounds {
  readonly #context: BaseAudioContext;
  readonly #sounds = new Map<string, Promise<AudioBuffer>>();

  constructor(context: BaseAudioContext) {
    this.#context = context;
  }

  get(reading: Reading, settings: RawSettings, { signal, levelMatched }: PhraseChoice): Promise<AudioBuffer> {
    const level = levelMatched ? "matched" : "true";
    const rate = this.#context.sampleRate;
    const request: PreviewRequest = {
      build: reading.source,
      settings,
      ...(signal ? { signal } : {}),
      level,
      rate,
      encoding: "float32",
    };
    const key = JSON.stringify(request);
    const known = this.#sounds.get(key);
    if (known) return known;
    const sound = this.#fetch(request);
    this.#sounds.set(key, sound);
    // A refusal must not be remembered: the service may only have been busy.
    sound.catch(() => this.#sounds.delete(key));
    if (this.#sounds.size > MAX_SOUNDS) this.#sounds.delete(this.#sounds.keys().next().value!);
    return sound;
  }

  async #fetch(request: PreviewRequest): Promise<AudioBuffer> {
    return this.#context.decodeAudioData(await postForBytes("/api/preview", request));
  }
}
