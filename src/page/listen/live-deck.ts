import { FADE_SECONDS } from "./deck.ts";

interface Slot {
  readonly convolver: ConvolverNode;
  readonly gain: GainNode;
}

/** How long a filter that has been faded out still rings before it is let go. */
const TAIL_SECONDS = 0.5;

/**
 * Plays a sound through a filter that can be exchanged while it plays: the new one fades in as the old one fades out, so a
 * knob can be turned without a click. What is played never leaves the browser.
 */
export class LiveDeck {
  readonly context: BaseAudioContext;
  readonly #input: GainNode;
  readonly #level: GainNode;
  #source: AudioNode | undefined;
  #slot: Slot | undefined;

  constructor(context: BaseAudioContext, output: AudioNode) {
    this.context = context;
    this.#input = context.createGain();
    this.#level = context.createGain();
    this.#level.connect(output);
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
    source.onended = () => {
      if (this.#source === source) {
        this.stop();
        onEnd();
      }
    };
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
    const gain = new GainNode(this.context, { gain: this.#slot ? 0 : 1 });
    this.#input.connect(convolver).connect(gain).connect(this.#level);
    if (this.#slot) this.#cross(this.#slot, gain);
    this.#slot = { convolver, gain };
  }

  /** @param gain factor on what comes out of the filter */
  setLevel(gain: number): void {
    this.#level.gain.setTargetAtTime(gain, this.context.currentTime, FADE_SECONDS);
  }

  stop(): void {
    if (this.#source instanceof AudioBufferSourceNode) {
      this.#source.onended = null;
      this.#source.stop();
    }
    this.#source?.disconnect();
    this.#source = undefined;
    if (this.#slot) this.#release(this.#slot);
    this.#slot = undefined;
  }

  #take(source: AudioNode): void {
    this.#source?.disconnect();
    this.#source = source;
    source.connect(this.#input);
  }

  #cross(before: Slot, gain: GainNode): void {
    const now = this.context.currentTime;
    gain.gain.setValueAtTime(0, now);
    gain.gain.linearRampToValueAtTime(1, now + FADE_SECONDS);
    before.gain.gain.cancelScheduledValues(now);
    before.gain.gain.setValueAtTime(before.gain.gain.value, now);
    before.gain.gain.linearRampToValueAtTime(0, now + FADE_SECONDS);
    setTimeout(() => this.#release(before), TAIL_SECONDS * 1000);
  }

  #release({ convolver, gain }: Slot): void {
    this.#input.disconnect(convolver);
    convolver.disconnect();
    gain.disconnect();
  }
}
