import { afterPlaying } from "./audio-clock.ts";
import { Crossing, filterWay, STRAIGHT, type Way } from "./crossing.ts";
import { FADE_SECONDS, LEAD_SECONDS } from "./fader.ts";
import { NoiseLoop } from "./noise-loop.ts";

/** What one sound goes through, from its source to the output; the next one has a chain of its own. */
interface Chain {
  readonly guard: Crossing;
  /** What is behind the jack. */
  readonly heard: Crossing;
  readonly level: GainNode;
  noise: NoiseLoop | undefined;
}

/**
 * Plays a sound through a filter, and on through what is behind the jack, both of which can be exchanged while it plays without a
 * click. What is played never leaves the browser.
 */
export class LiveDeck {
  readonly context: BaseAudioContext;
  readonly #output: AudioNode;
  #chain: Chain;
  #source: AudioNode | undefined;

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
    this.#chain.guard.take(filterWay(this.context, impulse), this.#whenPlaying());
  }

  /** Lets other noise take over between filter and jack, each of these repeated without end; none is silence. */
  setNoise(periods: readonly AudioBuffer[]): void {
    const at = this.#soon();
    this.#chain.noise?.letGo(at);
    this.#chain.noise =
      periods.length > 0 ? new NoiseLoop(this.context, periods, this.#chain.heard.input, at) : undefined;
  }

  /** Lets something else take over behind the jack; before the first call nothing is there. */
  setHeardThrough(way: Way): void {
    this.#chain.heard.take(way, this.#whenPlaying());
  }

  /** @param gain factor on what comes out at the end */
  setLevel(gain: number): void {
    const level = this.#chain.level.gain;
    if (this.playing) level.setTargetAtTime(gain, this.context.currentTime, FADE_SECONDS);
    // Nothing sounds that could click, and an instrument must not come in at full level on its way to a low one.
    else level.value = gain;
  }

  stop(): void {
    const at = this.#soon();
    const source = this.#source;
    const { guard, heard, noise } = this.#chain;
    noise?.letGo(at);
    if (source instanceof AudioBufferSourceNode) {
      source.onended = null;
      source.stop(at + FADE_SECONDS);
    }
    // One fade is enough; two in a row would fall twice as steeply.
    heard.letGo(at, () => {
      source?.disconnect();
      guard.end();
    });
    this.#source = undefined;
    this.#chain = this.#newChain();
  }

  #soon(): number {
    return this.context.currentTime + LEAD_SECONDS;
  }

  #whenPlaying(): number | undefined {
    return this.playing ? this.#soon() : undefined;
  }

  #newChain(): Chain {
    const [guard, heard] = [new Crossing(this.context), new Crossing(this.context)];
    const level = this.context.createGain();
    guard.output.connect(heard.input);
    heard.output.connect(level).connect(this.#output);
    heard.take(STRAIGHT, undefined);
    return { guard, heard, level, noise: undefined };
  }

  #take(source: AudioNode): void {
    this.#source?.disconnect();
    this.#source = source;
    source.connect(this.#chain.guard.input);
  }

  /** A recording is over when everything behind it has answered the last of it. */
  #ringOut(source: AudioNode, onEnd: () => void): void {
    const { guard, heard } = this.#chain;
    afterPlaying(this.context, guard.ringSeconds + heard.ringSeconds, () => {
      if (this.#source !== source) return;
      this.stop();
      onEnd();
    });
  }
}
