import { filterDelaySamples } from "../../filter/impulse-response.ts";
import { afterPlaying } from "./audio-clock.ts";
import { Fader } from "./fader.ts";

/** Nodes that a sound goes through one after the other. */
export interface Way {
  readonly nodes: readonly AudioNode[];
  /** How long it answers after its sound has ended. */
  readonly ringSeconds: number;
  /** By how much it is later than nothing at all. */
  readonly lateSeconds: number;
  /** Called once it is of no use any more. */
  readonly onEnd?: () => void;
}

interface Slot {
  readonly way: Way;
  readonly fader: Fader;
}

/** How long a way that has been faded out is still kept before it is let go. */
const KEPT_SECONDS = 0.5;

/** A place that a sound goes through, where another way takes over without a click: the new one fades in as the old one fades out. */
export class Crossing {
  readonly input: GainNode;
  readonly output: GainNode;
  #slot: Slot | undefined;

  constructor(context: BaseAudioContext) {
    this.input = context.createGain();
    this.output = context.createGain();
  }

  get ringSeconds(): number {
    return this.#slot?.way.ringSeconds ?? 0;
  }

  /** @param at seconds of the context's time, still to come, of the change; undefined where nothing sounds that could click */
  take(way: Way, at: number | undefined): void {
    const isFaded = this.#slot !== undefined && at !== undefined;
    const fader = new Fader(this.input.context, isFaded ? 0 : 1);
    const ends = [this.input, ...way.nodes, fader.node, this.output];
    for (const [index, node] of ends.slice(1).entries()) ends[index]!.connect(node);
    if (isFaded) {
      fader.fade(1, at);
      this.letGo(at);
    } else this.end();
    this.#slot = { way, fader };
  }

  /** Fades what it goes through out; what is left of it is disconnected once nobody hears it. */
  letGo(at: number, also?: () => void): void {
    if (!this.#slot) return;
    const slot = this.#slot;
    this.#slot = undefined;
    slot.fader.fade(0, at);
    afterPlaying(this.input.context, KEPT_SECONDS, () => {
      also?.();
      this.#disconnect(slot);
    });
  }

  /** At once, where nobody hears it. */
  end(): void {
    if (this.#slot) this.#disconnect(this.#slot);
    this.#slot = undefined;
  }

  #disconnect({ way, fader }: Slot): void {
    const [first = fader.node] = way.nodes;
    this.input.disconnect(first);
    for (const node of [...way.nodes, fader.node]) node.disconnect();
    way.onEnd?.();
  }
}

/** What a sound goes through where nothing is done to it. */
export const STRAIGHT: Way = { nodes: [], ringSeconds: 0, lateSeconds: 0 };

/** A filter as it is: to normalise it would make every setting equally loud in its own way. */
export function filterWay(context: BaseAudioContext, impulse: AudioBuffer): Way {
  const convolver = new ConvolverNode(context, { disableNormalization: true, buffer: impulse });
  const lateSeconds = filterDelaySamples(context.sampleRate) / context.sampleRate;
  return { nodes: [convolver], ringSeconds: impulse.duration, lateSeconds };
}
