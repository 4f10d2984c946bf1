import { FILTER_DELAY_SAMPLES } from "../../filter/impulse-response.ts";
import type { AppStore, OwnSound } from "../state/app-state.ts";
import type { AudioRoom } from "./audio-room.ts";
import type { Heard } from "./heard.ts";
import { LiveDeck } from "./live-deck.ts";
import { matchedGain, renderThrough } from "./local-render.ts";
import { ownRecording } from "./own-recordings.ts";

/**
 * From the string to the ear as far as the browser knows it, in seconds: what the input and the output device report, and the
 * filter's own delay.
 */
function latencyOf(context: AudioContext, stream: MediaStream): number {
  const { latency = 0 } = (stream.getAudioTracks()[0]?.getSettings() ?? {}) as { latency?: number };
  return latency + context.baseLatency + (context.outputLatency || 0) + FILTER_DELAY_SAMPLES / context.sampleRate;
}

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
  async play(heard: Heard, isCurrent: () => boolean): Promise<void> {
    const { ownSound, liveInput, liveGain } = this.#store.state;
    const context = liveInput ? this.#room.liveContext : this.#room.context;
    await context.resume();
    const recording = liveInput || !ownSound ? undefined : await ownRecording(context, ownSound.file);
    const impulse = await this.#room.impulseFor(context, heard);
    const gain = recording ? await this.#gainFor(recording, impulse) : liveGain;
    if (!isCurrent()) return;
    const wanted = liveInput ?? ownSound;
    if (this.#deck?.playing && this.#source !== wanted) this.#deck.stop();
    if (this.#deck?.context !== context) this.#deck = new LiveDeck(context, context.destination);
    this.#deck.setImpulse(impulse);
    this.#deck.setLevel(gain);
    this.#source = wanted;
    if (this.#deck.playing) return;
    if (liveInput) {
      this.#deck.startInput(liveInput);
      this.#store.set({ liveLatencySeconds: latencyOf(this.#room.liveContext, liveInput) });
    }
    if (recording) this.#deck.startRecording(recording, this.#store.state.loop, this.#onEnd);
  }

  stop(): void {
    this.#deck?.stop();
    this.#source = undefined;
  }

  async #gainFor(recording: AudioBuffer, impulse: AudioBuffer): Promise<number> {
    return this.#store.state.levelMatched ? matchedGain(await renderThrough(recording, impulse)) : 1;
  }
}
