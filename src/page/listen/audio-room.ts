import type { RawSettings } from "../../build-file/settings.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";
import { fetchImpulse } from "./impulses.ts";
import { matchedGain, renderThrough, scaledBuffer } from "./local-render.ts";
import { ownRecording } from "./own-recordings.ts";
import { PreviewSounds } from "./preview-sounds.ts";

/** The page's one audio context and the sounds made for it. */
export class AudioRoom {
  readonly #store: AppStore;
  #context: AudioContext | undefined;
  #sounds: PreviewSounds | undefined;

  constructor(store: AppStore) {
    this.#store = store;
  }

  /** Made at the first wish to hear something: browsers let no page open its sound before that. */
  get context(): AudioContext {
    this.#context ??= new AudioContext();
    return this.#context;
  }

  /** The chosen sound as a setting gives it: a phrase rendered by the service, or one's own recording rendered here. */
  async soundOf(reading: Reading, settings: RawSettings, levelMatched: boolean): Promise<AudioBuffer> {
    const { signal, ownSound } = this.#store.state;
    if (ownSound) return this.#ownSoundOf(ownSound.file, reading, settings, levelMatched);
    this.#sounds ??= new PreviewSounds(this.context);
    return this.#sounds.get(reading, settings, { signal, levelMatched });
  }

  async #ownSoundOf(file: File, reading: Reading, settings: RawSettings, matched: boolean): Promise<AudioBuffer> {
    const [sound, impulse] = await Promise.all([
      ownRecording(this.context, file),
      fetchImpulse(this.context, reading, settings),
    ]);
    const rendered = await renderThrough(sound, impulse);
    return matched ? scaledBuffer(rendered, matchedGain(rendered)) : rendered;
  }
}
