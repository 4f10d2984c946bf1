import type { RawSettings } from "../../build/settings.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";
import { Deck } from "./deck.ts";
import { PreviewSounds } from "./preview-sounds.ts";

/** Plays the setting on the bench; what is changed during playback takes over at the same place. */
export class Listening {
  readonly #store: AppStore;
  #context: AudioContext | undefined;
  #deck: Deck | undefined;
  #sounds: PreviewSounds | undefined;
  #latestRequest = 0;

  constructor(store: AppStore) {
    this.#store = store;
    const follow = () => {
      if (this.#store.state.playing === "yes") void this.playCurrent();
    };
    store.watchAny(
      (state) => [state.reading, state.settings, state.signal, state.levelMatched, state.ownSound],
      follow,
    );
    store.watch(
      (state) => [state.loop],
      (loop) => {
        if (this.#deck) this.#deck.loop = loop;
      },
    );
  }

  async toggle(): Promise<void> {
    if (this.#store.state.playing === "no") await this.playCurrent();
    else this.stop();
  }

  stop(): void {
    this.#latestRequest += 1;
    this.#deck?.stop();
    this.#store.set({ playing: "no" });
  }

  async playCurrent(): Promise<void> {
    const { reading, settings } = this.#store.state;
    if (reading) await this.play(reading, settings);
  }

  async play(reading: Reading, settings: RawSettings): Promise<void> {
    const { deck, sounds, context } = this.#equipment();
    this.#latestRequest += 1;
    const request = this.#latestRequest;
    if (!deck.playing) this.#store.set({ playing: "loading", notice: "" });
    try {
      await context.resume();
      const sound = await sounds.get(reading, settings, this.#store.state);
      if (request !== this.#latestRequest) return;
      deck.play(sound);
      this.#store.set({ playing: "yes" });
    } catch (error) {
      if (request !== this.#latestRequest) return;
      this.stop();
      this.#store.set({ notice: `Nothing to play: ${(error as Error).message}` });
    }
  }

  /** Made at the first wish to hear something: browsers let no page open its sound before that. */
  #equipment() {
    this.#context ??= new AudioContext();
    this.#deck ??= new Deck(this.#context, this.#context.destination, () => this.#store.set({ playing: "no" }));
    this.#sounds ??= new PreviewSounds(this.#context);
    this.#deck.loop = this.#store.state.loop;
    return { context: this.#context, deck: this.#deck, sounds: this.#sounds };
  }
}
