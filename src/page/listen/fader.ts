export const FADE_SECONDS = 0.03;
/** Time for all that belongs to a change to be scheduled before the change begins. */
export const LEAD_SECONDS = 0.02;

/**
 * A gain that fades. Where it stands follows from what it was asked for, so that a fade begun in the midst of another goes on
 * from there; `cancelAndHoldAtTime` would do the same, but not every browser has it.
 */
export class Fader {
  readonly node: GainNode;
  #from: number;
  #to: number;
  #start = Number.NEGATIVE_INFINITY;

  constructor(context: BaseAudioContext, level: 0 | 1) {
    this.node = new GainNode(context, { gain: level });
    this.#from = level;
    this.#to = level;
  }

  /** @param at seconds of the context's time, still to come */
  fade(to: 0 | 1, at: number): void {
    const { gain } = this.node;
    const held = this.#levelAt(at);
    const isUnderWay = at > this.#start && at < this.#start + FADE_SECONDS;
    gain.cancelScheduledValues(at);
    // What was cancelled includes the end that a fade under way runs to: it gets one where it is cut off.
    if (isUnderWay) gain.linearRampToValueAtTime(held, at);
    else gain.setValueAtTime(held, at);
    gain.linearRampToValueAtTime(to, at + FADE_SECONDS);
    this.#from = held;
    this.#to = to;
    this.#start = at;
  }

  #levelAt(at: number): number {
    const share = Math.min(1, Math.max(0, (at - this.#start) / FADE_SECONDS));
    return this.#from + (this.#to - this.#from) * share;
  }
}
