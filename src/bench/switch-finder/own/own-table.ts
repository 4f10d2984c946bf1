import { DisjointSets } from "../../../disjoint-sets.ts";
import { bitsOf, type Heard } from "../heard.ts";
import type { Contacts } from "../known/known-specs.ts";

/** What one position is known to join: sets of lugs, and which sets are known not to be joined. */
interface Position {
  readonly setOf: Int32Array;
  readonly sizes: Int32Array;
  readonly sets: number;
  /** `[set * sets + other]` is 1 where some lug of one was silent with some lug of the other. */
  readonly apart: Uint8Array;
}

function positionOf(heard: Heard, bit: number): Position {
  const joined = new DisjointSets(heard.lugs);
  const told = (masks: Int32Array, use: (a: number, b: number) => void) => {
    for (let a = 0; a < heard.lugs; a++)
      for (let b = a + 1; b < heard.lugs; b++) if ((masks[a * heard.lugs + b]! >> bit) & 1) use(a, b);
  };
  told(heard.on, (a, b) => joined.join(a, b));
  const { labels, count } = joined.labels();
  const sizes = new Int32Array(count);
  for (const set of labels) sizes[set]!++;
  const apart = new Uint8Array(count * count);
  told(heard.off, (a, b) => {
    apart[labels[a]! * count + labels[b]!] = 1;
    apart[labels[b]! * count + labels[a]!] = 1;
  });
  return { setOf: labels, sizes, sets: count, apart };
}

/** A switch of one's own: what beeps with the same lug beeps with each other, position by position, and nothing else is taken for granted. */
export class OwnTable {
  readonly #lugs: number;
  readonly #heard: Heard;
  readonly #positions: readonly Position[];

  constructor(heard: Heard) {
    this.#heard = heard;
    this.#lugs = heard.lugs;
    this.#positions = bitsOf(heard.all).map((bit) => positionOf(heard, bit));
  }

  /** Pairs of lugs of which it is open whether they beep, in every position for which it is; best first. */
  openPairs(): { readonly a: number; readonly b: number; readonly gain: number }[] {
    const pairs: { a: number; b: number; gain: number }[] = [];
    for (let a = 0; a < this.#lugs; a++)
      for (let b = a + 1; b < this.#lugs; b++) {
        const gain = this.#positions.reduce((sum, position) => sum + settledBy(position, a, b), 0);
        if (gain > 0) pairs.push({ a, b, gain });
      }
    return pairs;
  }

  /** What is known to be joined, by pairs of lugs. */
  contacts(): Contacts {
    const contacts = new Int32Array(this.#lugs ** 2);
    for (const [bit, { setOf }] of this.#positions.entries())
      for (let a = 0; a < this.#lugs; a++)
        for (let b = 0; b < this.#lugs; b++)
          if (a !== b && setOf[a] === setOf[b]) contacts[a * this.#lugs + b]! |= 1 << bit;
    return contacts;
  }

  /** Pairs that were silent where others say that they are joined, and those others. */
  contradicted(): { readonly a: number; readonly b: number }[] {
    return this.#positions.flatMap(({ setOf }, bit) => {
      const within = (masks: Int32Array, set: number | undefined) => this.#toldWithin(masks, bit, setOf, set);
      const torn = within(this.#heard.off, undefined);
      const sets = new Set(torn.map(({ a }) => setOf[a]!));
      return [...torn, ...[...sets].flatMap((set) => within(this.#heard.on, set))];
    });
  }

  #toldWithin(masks: Int32Array, bit: number, setOf: Int32Array, set: number | undefined) {
    const pairs: { a: number; b: number }[] = [];
    for (let a = 0; a < this.#lugs; a++)
      for (let b = a + 1; b < this.#lugs; b++) {
        const isIn = setOf[a] === setOf[b] && (set === undefined || setOf[a] === set);
        if (isIn && (masks[a * this.#lugs + b]! >> bit) & 1) pairs.push({ a, b });
      }
    return pairs;
  }
}

/** How many pairs a touch of these two may settle in one position: all between their two sets. */
function settledBy({ setOf, sizes, sets, apart }: Position, a: number, b: number): number {
  const [one, other] = [setOf[a]!, setOf[b]!];
  return one === other || apart[one * sets + other] ? 0 : sizes[one]! * sizes[other]!;
}
