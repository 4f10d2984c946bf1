import type { AppStore, OwnSound } from "../state/app-state.ts";
import type { AudioRoom } from "./audio-room.ts";
import type { Heard } from "./heard.ts";
import { fetchImpulse } from "./impulses.ts";
import { LiveDeck } from "./live-deck.ts";
import { matchedGain, renderThrough } from "./local-render.ts";
import { ownRecording } from "./own-recordings.ts";

/** One's own recording or instrument through the guard, in the browser. */
export class LivePlayer {
  readonly #store: AppStore;
  readonly #room: AudioRoom;
  readonly #onEnd: () => void;
  #deck: LiveDeck | undefined;
  #source: OwnSound | MediaStream | undefined;

  constructor(store: AppStore, room: AudioRoom, onEnd: () => void) {
    this.#store = store;
    this.#room = room;
    this.#onEnd = onEnd;
    store.watch(
      (state) => [state.liveGain],
      (gain) => {
        if (this.#source instanceof MediaStream) this.#deck?.setLevel(gain);
      },
    );
  }

  set loop(loop: boolean) {
    if (this.#deck) this.#deck.loop = loop;
  }

  /** Starts, or lets the filter of another setting take over. */
  async play({ reading, settings }: Heard, isCurrent: () => boolean): Promise<void> {
    const { context } = this.#room;
    const { ownSound, liveInput, liveGain } = this.#store.state;
    const recording = liveInput || !ownSound ? undefined : await ownRecording(context, ownSound.file);
    const impulse = await fetchImpulse(context, reading, settings);
    const gain = recording ? await this.#gainFor(recording, impulse) : liveGain;
    if (!isCurrent()) return;
    this.#deck ??= new LiveDeck(context, context.destination);
    const wanted = liveInput ?? ownSound;
    if (this.#deck.playing && this.#source !== wanted) this.#deck.stop();
    this.#deck.setImpulse(impulse);
    this.#deck.setLevel(gain);
    this.#source = wanted;
    if (this.#deck.playing) return;
    if (liveInput) this.#deck.startInput(liveInput);
    else if (recording) this.#deck.startRecording(recording, this.#store.state.loop, this.#onEnd);
  }

  stop(): void {
    this.#deck?.stop();
    this.#source = undefined;
  }

  async #gainFor(recording: AudioBuffer, impulse: AudioBuffer): Promise<number> {
    return this.#store.state.levelMatched ? matchedGain(await renderThrough(recording, impulse)) : 1;
  }
}
