import type { AppStore } from "../state/app-state.ts";
import { fitSettings } from "../state/editor.ts";
import type { AudioRoom } from "./audio-room.ts";
import { Deck } from "./deck.ts";
import type { Heard } from "./heard.ts";
import { LivePlayer } from "./live-player.ts";

/** Plays the setting on the bench; what is changed during playback takes over at the same place. */
export class Listening {
  readonly #store: AppStore;
  readonly #room: AudioRoom;
  readonly #live: LivePlayer;
  #deck: Deck | undefined;
  #latestRequest = 0;

  constructor(store: AppStore, room: AudioRoom) {
    this.#store = store;
    this.#room = room;
    this.#live = new LivePlayer(store, room, () => store.set({ playing: "no" }));
    this.#follow();
  }

  async toggle(): Promise<void> {
    if (this.#store.state.playing === "no") await this.play();
    else this.stop();
  }

  stop(): void {
    this.#latestRequest += 1;
    this.#deck?.stop();
    this.#live.stop();
    this.#store.set({ playing: "no" });
  }

  async play(): Promise<void> {
    const heard = this.#heard();
    if (!heard) return;
    this.#latestRequest += 1;
    const request = this.#latestRequest;
    if (this.#store.state.playing === "no") this.#store.set({ playing: "loading", notice: "" });
    try {
      await this.#room.context.resume();
      const isCurrent = () => request === this.#latestRequest;
      if (this.#isLocal()) await this.#live.play(heard, isCurrent);
      else await this.#playRendered(heard, isCurrent);
      if (isCurrent()) this.#store.set({ playing: "yes" });
    } catch (error) {
      if (request !== this.#latestRequest) return;
      this.stop();
      this.#store.set({ notice: `Nothing to play: ${(error as Error).message}` });
    }
  }

  async #playRendered({ reading, settings }: Heard, isCurrent: () => boolean): Promise<void> {
    const sound = await this.#room.soundOf(reading, settings, this.#store.state.levelMatched);
    if (!isCurrent()) return;
    this.#live.stop();
    const { context } = this.#room;
    this.#deck ??= new Deck(context, context.destination, () => this.#store.set({ playing: "no" }));
    this.#deck.loop = this.#store.state.loop;
    this.#deck.play(sound);
  }

  /** One's own sound goes through a filter in the browser; phrases are rendered by the service, coil by coil. */
  #isLocal(): boolean {
    const { ownSound, liveInput } = this.#store.state;
    if (ownSound === undefined && liveInput === undefined) return false;
    this.#deck?.stop();
    return true;
  }

  #heard(): Heard | undefined {
    const { reading, other, settings, heardBuild } = this.#store.state;
    const chosen = heardBuild === "B" ? other : reading;
    return chosen ? { reading: chosen, settings: fitSettings(chosen, settings) } : undefined;
  }

  #follow(): void {
    const change = () => {
      if (this.#store.state.playing !== "no") void this.play();
    };
    this.#store.watchAny(
      (state) => [
        state.reading,
        state.other,
        state.heardBuild,
        state.settings,
        state.signal,
        state.levelMatched,
        state.ownSound,
        state.liveInput,
      ],
      change,
    );
    this.#store.watch(
      (state) => [state.loop],
      (loop) => {
        if (this.#deck) this.#deck.loop = loop;
        this.#live.loop = loop;
      },
    );
  }
}
