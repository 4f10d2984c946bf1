import type { RawSettings } from "../../build/settings.ts";
import { postForBytes } from "../server/client.ts";
import type { AppState } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";

export type SoundChoice = Pick<AppState, "signal" | "levelMatched" | "ownSound">;

/** What the service is asked for, for one preview or a set. */
export function previewRequest(reading: Reading, choice: SoundChoice, rateHz?: number): Record<string, unknown> {
  return {
    build: reading.source,
    ...(choice.ownSound ? {} : { signal: choice.signal }),
    level: choice.levelMatched ? "matched" : "true",
    ...(choice.ownSound || rateHz === undefined ? {} : { rate: rateHz }),
  };
}

const MAX_SOUNDS = 60;

/** Rendered previews, kept while the page is open so that a cell heard once plays at once. */
export class PreviewSounds {
  readonly #context: BaseAudioContext;
  readonly #sounds = new Map<string, Promise<AudioBuffer>>();
  readonly #fileNumbers = new WeakMap<File, number>();
  #files = 0;

  constructor(context: BaseAudioContext) {
    this.#context = context;
  }

  get(reading: Reading, settings: RawSettings, choice: SoundChoice): Promise<AudioBuffer> {
    const request = { ...previewRequest(reading, choice, this.#context.sampleRate), settings };
    const key = JSON.stringify([request, choice.ownSound ? this.#numberOf(choice.ownSound.file) : 0]);
    const known = this.#sounds.get(key);
    if (known) return known;
    const sound = this.#fetch({ ...request, encoding: "float32" }, choice.ownSound?.file);
    this.#sounds.set(key, sound);
    // A refusal must not be remembered: the service may only have been busy.
    sound.catch(() => this.#sounds.delete(key));
    if (this.#sounds.size > MAX_SOUNDS) this.#sounds.delete(this.#sounds.keys().next().value!);
    return sound;
  }

  async #fetch(request: unknown, file: File | undefined): Promise<AudioBuffer> {
    return this.#context.decodeAudioData(await postForBytes("/api/preview", request, file));
  }

  #numberOf(file: File): number {
    const known = this.#fileNumbers.get(file);
    if (known !== undefined) return known;
    this.#files += 1;
    this.#fileNumbers.set(file, this.#files);
    return this.#files;
  }
}
