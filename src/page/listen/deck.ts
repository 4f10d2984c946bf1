export const FADE_SECONDS = 0.03;
/** Time for both sources to be scheduled before the fade begins. */
const LEAD_SECONDS = 0.02;

interface Voice {
  readonly source: AudioBufferSourceNode;
  readonly gain: GainNode;
}

/**
 * Plays rendered sounds of equal length. Another sound takes over at the same place: both run for a moment while their
 * gains cross, so nothing clicks and no beat is lost.
 */
export class Deck {
  readonly context: BaseAudioContext;
  readonly output: AudioNode;
  readonly #onEnd: () => void;
  #voice: Voice | undefined;
  #startedAt = 0;
  #loop = true;
  #duration = 0;

  constructor(context: BaseAudioContext, output: AudioNode, onEnd: () => void) {
    this.context = context;
    this.output = output;
    this.#onEnd = onEnd;
  }

  get playing(): boolean {
    return this.#voice !== undefined;
  }

  /** Seconds into the sound. */
  get place(): number {
    const elapsed = Math.max(0, this.context.currentTime - this.#startedAt);
    return this.#duration > 0 ? elapsed % this.#duration : 0;
  }

  set loop(loop: boolean) {
    this.#loop = loop;
    if (this.#voice) this.#voice.source.loop = loop;
  }

  /** Starts a sound, or lets it take over from the one that plays. */
  play(buffer: AudioBuffer): void {
    const before = this.#voice;
    const at = this.context.currentTime + LEAD_SECONDS;
    const place = before ? (this.place + LEAD_SECONDS) % buffer.duration : 0;
    const voice = this.#voiceOf(buffer);
    voice.gain.gain.setValueAtTime(before ? 0 : 1, this.context.currentTime);
    voice.gain.gain.setValueAtTime(before ? 0 : 1, at);
    if (before) voice.gain.gain.linearRampToValueAtTime(1, at + FADE_SECONDS);
    voice.source.start(at, place);
    if (before) this.#fadeOut(before, at);
    this.#voice = voice;
    this.#duration = buffer.duration;
    this.#startedAt = at - place;
  }

  stop(): void {
    if (this.#voice) this.#fadeOut(this.#voice, this.context.currentTime);
    this.#voice = undefined;
  }

  #voiceOf(buffer: AudioBuffer): Voice {
    const source = this.context.createBufferSource();
    source.buffer = buffer;
    source.loop = this.#loop;
    const gain = this.context.createGain();
    source.connect(gain).connect(this.output);
    const voice = { source, gain };
    source.onended = () => {
      gain.disconnect();
      if (this.#voice !== voice) return;
      this.#voice = undefined;
      this.#onEnd();
    };
    return voice;
  }

  #fadeOut({ source, gain }: Voice, at: number): void {
    gain.gain.setValueAtTime(1, at);
    gain.gain.linearRampToValueAtTime(0, at + FADE_SECONDS);
    source.stop(at + FADE_SECONDS + 0.01);
  }
}
