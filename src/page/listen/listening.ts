import { settingsAlong } from "../curves/axes.ts";
import { later } from "../dom/later.ts";
import type { AppState, AppStore } from "../state/app-state.ts";
import { fitSettings } from "../state/fit-settings.ts";
import type { AudioRoom } from "./audio-room.ts";
import { heardIn } from "./chain/asked-chain.ts";
import { Deck } from "./deck.ts";
import type { Heard } from "./heard.ts";
import type { LivePlayer } from "./live-player.ts";

/** Long enough that a knob being turned is rendered once, when it has come to rest. */
const SETTLED_MS = 400;

/** What is played, how, and what it is heard through. */
const playedIn = (state: AppState) => [state.signal, state.hand, state.stringAge, state.noise, ...heardIn(state)];

/** Plays the setting on the bench; what is changed during playback takes over at the same place. */
export class Listening {
  readonly #store: AppStore;
  readonly #room: AudioRoom;
  /** Loaded when one's own sound is first wanted. */
  #live: LivePlayer | undefined;
  #deck: Deck | undefined;
  #latestRequest = 0;
  /** Stands for the wishes under way, one after the other. */
  #asking: object | undefined;

  constructor(store: AppStore, room: AudioRoom) {
    this.#store = store;
    this.#room = room;
    this.#follow();
  }

  async toggle(): Promise<void> {
    if (this.#store.state.playing === "no") await this.play();
    else this.stop();
  }

  stop(): void {
    this.#latestRequest += 1;
    this.#asking = undefined;
    this.#deck?.stop();
    this.#live?.stop();
    this.#store.set({ playing: "no" });
  }

  /** One wish is met at a time: of those that come meanwhile, as from a dial that is being turned, the last is met next. */
  async play(): Promise<void> {
    if (!this.#heard()) return;
    this.#latestRequest += 1;
    if (this.#store.state.playing === "no") this.#store.set({ playing: "loading", notice: "" });
    if (this.#asking) return;
    const asking = {};
    this.#asking = asking;
    for (let met = -1; met !== this.#latestRequest && this.#asking === asking; ) {
      met = this.#latestRequest;
      await this.#playLatest(met);
    }
    if (this.#asking === asking) this.#asking = undefined;
  }

  async #playLatest(request: number): Promise<void> {
    const heard = this.#heard();
    if (!heard) return;
    try {
      const isCurrent = () => request === this.#latestRequest;
      if (this.#isLocal()) await (await this.#livePlayer()).play(heard, isCurrent);
      else await this.#playRendered(heard, isCurrent);
      if (isCurrent()) this.#store.set({ playing: "yes" });
    } catch (error) {
      if (request !== this.#latestRequest) return;
      this.stop();
      this.#store.set({ notice: `Nothing to play: ${(error as Error).message}` });
    }
  }

  async #playRendered({ reading, settings }: Heard, isCurrent: () => boolean): Promise<void> {
    const { context } = this.#room;
    const [sound] = await Promise.all([
      this.#room.soundOf(reading, settings, this.#store.state.levelMatched),
      context.resume(),
    ]);
    if (!isCurrent()) return;
    this.#live?.stop();
    this.#deck ??= new Deck(context, context.destination, () => this.#store.set({ playing: "no" }));
    this.#deck.loop = this.#store.state.loop;
    this.#deck.play(sound);
  }

  async #livePlayer(): Promise<LivePlayer> {
    const { LivePlayer } = await import("./live-player.ts");
    this.#live ??= new LivePlayer(this.#store, this.#room, () => this.#store.set({ playing: "no" }));
    return this.#live;
  }

  /** One's own sound goes through a filter in the browser; phrases are rendered by the service, coil by coil. */
  #isLocal(): boolean {
    const { ownSound, liveInput } = this.#store.state;
    if (ownSound === undefined && liveInput === undefined) return false;
    this.#deck?.stop();
    return true;
  }

  /** Has ready from now on, whenever things have come to rest, what play would start and what the lever would. */
  keepReady(): void {
    const prepare = later(SETTLED_MS, () => void this.#prepare());
    this.#store.watchAny(
      (state) => [state.view, state.heardBuild, ...playedIn(state), state.levelMatched, state.playing],
      prepare,
    );
  }

  async #prepare(): Promise<void> {
    const heard = this.#heard();
    if (!heard) return;
    const { view, playing } = this.#store.state;
    // Somebody who listens will turn the lever; before that it may stay as it is.
    const ahead = playing === "yes" ? settingsAlong(heard.reading, heard.settings, "position") : [];
    for (const settings of [heard.settings, ...ahead]) {
      if (this.#store.state.view !== view) return;
      // What cannot be rendered is told when somebody wants to hear it.
      await this.#room.prepare({ ...heard, settings }).catch(() => undefined);
    }
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
        ...playedIn(state),
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
        if (this.#live) this.#live.loop = loop;
      },
    );
  }
}
