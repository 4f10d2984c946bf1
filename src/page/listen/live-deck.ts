import { afterPlaying } from "./audio-clock.ts";
import { FADE_SECONDS, Fader, LEAD_SECONDS } from "./fader.ts";

interface Slot {
  readonly convolver: ConvolverNode;
  readonly fader: Fader;
}

/** What one sound goes through, from its source to the output; the next one has a chain of its own. */
interface Chain {
  readonly input: GainNode;
  readonly level: GainNode;
}

/** How long a filter that has been faded out is still kept before it is let go. */
const KEPT_SECONDS = 0.5;

/**
 * Plays a sound through a filter that can be exchanged while it plays: the new one fades in as the old one fades out, so a
 * knob can be turned without a click. What is played never leaves the browser.
 */
export class LiveDeck {
  readonly context: BaseAudioContext;
  readonly #output: AudioNode;
  #chain: Chain;
  #source: AudioNode | undefined;
  #slot: Slot | undefined;

  constructor(context: BaseAudioContext, output: AudioNode) {
    this.context = context;
    this.#output = output;
    this.#chain = this.#newChain();
  }

  get playing(): boolean {
    return this.#source !== undefined;
  }

  set loop(loop: boolean) {
    if (this.#source instanceof AudioBufferSourceNode) this.#source.loop = loop;
  }

  /** Starts a recording from its beginning. */
  startRecording(sound: AudioBuffer, loop: boolean, onEnd: () => void): void {
    const source = this.context.createBufferSource();
    source.buffer = sound;
    source.loop = loop;
    source.onended = () => this.#ringOut(source, onEnd);
    this.#take(source);
    source.start();
  }

  startInput(stream: MediaStream): void {
    // An offline context has no instrument to listen to.
    if (this.context instanceof AudioContext) this.#take(this.context.createMediaStreamSource(stream));
  }

  /** Lets another filter take over. */
  setImpulse(impulse: AudioBuffer): void {
    // Normalising would make every setting equally loud in its own way; the filter is to be applied as it is.
    const convolver = new ConvolverNode(this.context, { disableNormalization: true, buffer: impulse });
    const fader = new Fader(this.context, this.#slot ? 0 : 1);
    this.#chain.input.connect(convolver).connect(fader.node).connect(this.#chain.level);
    if (this.#slot) {
      const at = this.#soon();
      fader.fade(1, at);
      this.#letGo(this.#slot, at);
    }
    this.#slot = { convolver, fader };
  }

  /** @param gain factor on what comes out of the filter */
  setLevel(gain: number): void {
    const level = this.#chain.level.gain;
    if (this.playing) level.setTargetAtTime(gain, this.context.currentTime, FADE_SECONDS);
    // Nothing sounds that could click, and an instrument must not come in at full level on its way to a low one.
    else level.value = gain;
  }

  stop(): void {
    const at = this.#soon();
    if (this.#source instanceof AudioBufferSourceNode) {
      this.#source.onended = null;
      this.#source.stop(at + FADE_SECONDS);
    }
    if (this.#slot) this.#letGo(this.#slot, at, this.#source);
    this.#source = undefined;
    this.#slot = undefined;
    this.#chain = this.#newChain();
  }

  #soon(): number {
    return this.context.currentTime + LEAD_SECONDS;
  }

  #newChain(): Chain {
    const [input, level] = [this.context.createGain(), this.context.createGain()];
    level.connect(this.#output);
    return { input, level };
  }

  #take(source: AudioNode): void {
    this.#source?.disconnect();
    this.#source = source;
    source.connect(this.#chain.input);
  }

  /** A recording is over when the filter has answered the last of it. */
  #ringOut(source: AudioNode, onEnd: () => void): void {
    const ringSeconds = this.#slot?.convolver.buffer?.duration ?? 0;
    afterPlaying(this.context, ringSeconds, () => {
      if (this.#source !== source) return;
      this.stop();
      onEnd();
    });
  }

  #letGo({ convolver, fader }: Slot, at: number, source?: AudioNode): void {
    fader.fade(0, at);
    const { input } = this.#chain;
    afterPlaying(this.context, KEPT_SECONDS, () => {
      source?.disconnect();
      input.disconnect(convolver);
      convolver.disconnect();
      fader.node.disconnect();
    });
  }
}
