import type { Sound } from "../../audio/sound.ts";
import { BoundedMap } from "../../bounded-map.ts";
import { type Cabinet, readCabinet } from "../../listening/cabinet/read-cabinet.ts";
import { type Chain, createChain, speakerOf } from "../../listening/chain.ts";
import { type AskedChain, keyOf } from "./chain-key.ts";

/** The latest, and what was heard a turn of the drive ago. */
const MOST_KEPT = 4;

/** Chains as the service makes them, kept while they are asked for again. */
export class Chains {
  readonly #cabinets = new BoundedMap<string, Cabinet>(MOST_KEPT);
  readonly #chains = new BoundedMap<string, Chain>(MOST_KEPT);

  /** @throws PresolderError for a cabinet that cannot be used */
  through(asked: AskedChain | undefined, jack: Sound): Sound {
    return asked ? this.#chain(asked, jack.sampleRateHz).through(jack) : jack;
  }

  /** The taps of its last filter. @throws as `through` */
  speaker(asked: AskedChain, sampleRateHz: number): Float32Array<ArrayBuffer> {
    const { taps } = speakerOf({ drive: 0, cabinet: this.#cabinet(asked) }, sampleRateHz);
    return Float32Array.from(taps);
  }

  #chain(asked: AskedChain, sampleRateHz: number): Chain {
    const key = `${keyOf(asked)} ${sampleRateHz}`;
    const known = this.#chains.get(key);
    if (known) return known;
    const chain = createChain({ drive: asked.drive, cabinet: this.#cabinet(asked) }, sampleRateHz);
    this.#chains.set(key, chain);
    return chain;
  }

  #cabinet({ cabinet }: AskedChain): Cabinet | undefined {
    if (!cabinet) return undefined;
    const known = this.#cabinets.get(cabinet.key);
    if (known) return known;
    const read = readCabinet(cabinet.bytes);
    this.#cabinets.set(cabinet.key, read);
    return read;
  }
}
