import { afterPlaying } from "./audio-clock.ts";
import { FADE_SECONDS, Fader } from "./fader.ts";

/** Longer than its fade, so that it has faded wherever the context's time stands. */
const KEPT_SECONDS = 4 * FADE_SECONDS;

/** Sounds that are repeated without end, faded in and out. */
export class NoiseLoop {
  readonly #sources: readonly AudioBufferSourceNode[];
  readonly #fader: Fader;

  /** @param at seconds of the context's time, still to come, from when on they fade in */
  constructor(context: BaseAudioContext, periods: readonly AudioBuffer[], output: AudioNode, at: number) {
    this.#fader = new Fader(context, 0);
    this.#fader.node.connect(output);
    this.#sources = periods.map((buffer) => new AudioBufferSourceNode(context, { buffer, loop: true }));
    for (const source of this.#sources) {
      source.connect(this.#fader.node);
      source.start();
    }
    this.#fader.fade(1, at);
  }

  letGo(at: number): void {
    this.#fader.fade(0, at);
    afterPlaying(this.#fader.node.context, KEPT_SECONDS, () => {
      for (const source of this.#sources) source.stop();
      this.#fader.node.disconnect();
    });
  }
}
