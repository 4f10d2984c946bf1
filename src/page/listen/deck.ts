import { FADE_SECONDS, Fader, LEAD_SECONDS } from "./fader.ts";

interface Voice {
  readonly source: AudioBufferSourceNode;
  readonly fader: Fader;
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

  constructor(context: BaseAudioContext, output: AudioNode, onEnd: () => void) {
    this.context = context;
    this.output = output;
    this.#onEnd = onEnd;
  }

  get playing(): boolean {
    return this.#voice !== undefined;
  }

  set loop(loop: boolean) {
    this.#loop = loop;
    if (this.#voice) this.#voice.source.loop = loop;
  }

  /** Starts a sound, or lets it take over from the one that plays. */
  play(buffer: AudioBuffer): void {
    const before = this.#voice;
    const at = this.#soon();
    const place = before ? (at - this.#startedAt) % buffer.duration : 0;
    const voice = this.#voiceOf(buffer, before ? 0 : 1);
    voice.source.start(at, place);
    if (before) {
      voice.fader.fade(1, at);
      fadeOut(before, at);
    }
    this.#voice = voice;
    this.#startedAt = at - place;
  }

  stop(): void {
    if (this.#voice) fadeOut(this.#voice, this.#soon());
    this.#voice = undefined;
  }

  #soon(): number {
    return this.context.currentTime + LEAD_SECONDS;
  }

  #voiceOf(buffer: AudioBuffer, level: 0 | 1): Voice {
    const source = this.context.createBufferSource();
    source.buffer = buffer;
    source.loop = this.#loop;
    const fader = new Fader(this.context, level);
    source.connect(fader.node).connect(this.output);
    const voice = { source, fader };
    source.onended = () => {
      fader.node.disconnect();
      if (this.#voice !== voice) return;
      this.#voice = undefined;
      this.#onEnd();
    };
    return voice;
  }
}

function fadeOut({ source, fader }: Voice, at: number): void {
  fader.fade(0, at);
  source.stop(at + FADE_SECONDS + 0.01);
}
