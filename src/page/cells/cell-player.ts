import { BoundedMap } from "../../bounded-map.ts";
import type { AudioRoom } from "../listen/audio-room.ts";
import { heardIn } from "../listen/chain/asked-chain.ts";
import { Deck } from "../listen/deck.ts";
import type { Listening } from "../listen/listening.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Cell } from "./cell.ts";

/** A full board and some cells of a map; a phrase is a megabyte. */
const MOST_SOUNDS = 24;

/** Plays cells, all equally loud; another one takes over at the same place of the phrase. */
export class CellPlayer {
  readonly #store: AppStore;
  readonly #room: AudioRoom;
  readonly #listening: Listening;
  readonly #sounds = new BoundedMap<string, Promise<AudioBuffer>>(MOST_SOUNDS);
  readonly #watchers = new Set<() => void>();
  #deck: Deck | undefined;
  #current: string | undefined;

  constructor(store: AppStore, room: AudioRoom, listening: Listening) {
    this.#store = store;
    this.#room = room;
    this.#listening = listening;
    store.watchAny(
      (state) => [state.signal, state.hand, state.stringAge, state.ownSound, ...heardIn(state)],
      () => {
        this.#sounds.clear();
        this.stop();
      },
    );
    store.watch(
      (state) => [state.playing],
      (playing) => {
        if (playing !== "no") this.stop();
      },
    );
  }

  /** The key of the cell that plays or is about to. */
  get current(): string | undefined {
    return this.#current;
  }

  /** Whether a person has let the page sound, so that pointing may play. */
  get mayFollow(): boolean {
    return this.#deck !== undefined;
  }

  watch(effect: () => void): void {
    this.#watchers.add(effect);
  }

  /** @throws Error with what the renderer refuses */
  async play(cell: Cell): Promise<void> {
    if (this.#current === undefined) this.#listening.stop();
    this.#turnTo(cell.key);
    const { context } = this.#room;
    try {
      const [sound] = await Promise.all([this.sound(cell), context.resume()]);
      if (this.#current !== cell.key) return;
      this.#deck ??= new Deck(context, context.destination, () => this.#turnTo(undefined));
      this.#deck.loop = true;
      this.#deck.play(sound);
    } catch (error) {
      this.stop();
      throw error;
    }
  }

  stop(): void {
    this.#deck?.stop();
    this.#turnTo(undefined);
  }

  /** Has phrases ready before they are asked for. */
  async prepare(cells: readonly Cell[]): Promise<void> {
    // One's own recording goes through the page's sound device, which nobody has asked for yet.
    if (this.#store.state.ownSound) return;
    for (const cell of cells) await this.sound(cell).catch(() => undefined);
  }

  /** A cell's sound at the loudness of all. */
  sound({ key, guard, settings }: Cell): Promise<AudioBuffer> {
    const known = this.#sounds.get(key);
    if (known) return known;
    const sound = this.#room.soundOf(guard.reading, settings, true);
    this.#sounds.set(key, sound);
    // A refusal must not be remembered.
    sound.catch(() => this.#sounds.delete(key));
    return sound;
  }

  #turnTo(key: string | undefined): void {
    if (this.#current === key) return;
    this.#current = key;
    for (const effect of this.#watchers) effect();
  }
}
