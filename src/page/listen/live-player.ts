import { filterDelaySamples } from "../../filter/impulse-response.ts";
import type { AppStore, OwnSound } from "../state/app-state.ts";
import type { AudioRoom } from "./audio-room.ts";
import { heardIn } from "./chain/asked-chain.ts";
import { STRAIGHT, type Way } from "./crossing.ts";
import type { Heard } from "./heard.ts";
import { LiveDeck } from "./live-deck.ts";
import { matchedGain } from "./local-render.ts";
import { ownRecording } from "./own-recordings.ts";

/**
 * From the string to the ear as far as the browser knows it, in seconds: what the input and the output device report, the
 * filter's own delay and what is behind the jack.
 */
function latencyOf(context: AudioContext, stream: MediaStream, { lateSeconds }: Way): number {
  const { latency = 0 } = (stream.getAudioTracks()[0]?.getSettings() ?? {}) as { latency?: number };
  const devices = latency + context.baseLatency + (context.outputLatency || 0);
  return devices + filterDelaySamples(context.sampleRate) / context.sampleRate + lateSeconds;
}

/** One's own recording or instrument through the guard, in the browser. */
export class LivePlayer {
  readonly #store: AppStore;
  readonly #room: AudioRoom;
  readonly #onEnd: () => void;
  #deck: LiveDeck | undefined;
  #source: OwnSound | MediaStream | undefined;
  /** What the deck is heard through, and all that it was chosen by. */
  #heard: { readonly way: Way; readonly of: readonly unknown[] } = { way: STRAIGHT, of: [] };

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
    const [impulse, behind, noise] = await Promise.all([
      this.#room.impulseFor(context, heard),
      this.#behindJack(context),
      // An instrument that is played brings its own.
      recording ? this.#room.noiseFor(context, heard) : [],
    ]);
    const gain = recording ? await this.#gainFor(recording, impulse, heard) : liveGain;
    if (!isCurrent()) return;
    const wanted = liveInput ?? ownSound;
    if (this.#deck?.playing && this.#source !== wanted) this.#deck.stop();
    if (this.#deck?.context !== context) this.#deck = new LiveDeck(context, context.destination);
    this.#deck.setImpulse(impulse);
    this.#deck.setNoise(noise);
    if (behind !== this.#heard) this.#deck.setHeardThrough(behind.way);
    this.#heard = behind;
    this.#deck.setLevel(gain);
    this.#source = wanted;
    if (liveInput) {
      const liveLatencySeconds = latencyOf(this.#room.liveContext, liveInput, behind.way);
      if (liveLatencySeconds !== this.#store.state.liveLatencySeconds) this.#store.set({ liveLatencySeconds });
    }
    if (this.#deck.playing) return;
    if (liveInput) this.#deck.startInput(liveInput);
    if (recording) this.#deck.startRecording(recording, this.#store.state.loop, this.#onEnd);
  }

  stop(): void {
    this.#deck?.stop();
    this.#source = undefined;
    this.#heard = { way: STRAIGHT, of: [] };
  }

  /** What is to be behind the jack: what is there already, as long as nothing of it was chosen anew. */
  async #behindJack(context: BaseAudioContext): Promise<{ readonly way: Way; readonly of: readonly unknown[] }> {
    const { state } = this.#store;
    const of = [...heardIn(state), state.liveInput ?? state.ownSound];
    if (this.#deck?.playing && of.every((each, index) => each === this.#heard.of[index])) return this.#heard;
    const speaker = await this.#room.speakerFor(context);
    if (!speaker) return { way: STRAIGHT, of };
    const { chainWay } = await import("./chain/chain-way.ts");
    return { way: await chainWay(context, state, speaker), of };
  }

  async #gainFor(recording: AudioBuffer, impulse: AudioBuffer, heard: Heard): Promise<number> {
    if (!this.#store.state.levelMatched) return 1;
    return matchedGain(await this.#room.recordingThrough(recording, impulse, heard));
  }
}
