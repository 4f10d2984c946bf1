import type { WireKind } from "../../../build-file/wire-kinds.ts";

/** A reel that a person owns. */
export interface Reel {
  readonly colour: string;
  readonly kind: WireKind;
  /** How much is on it; not known where left out. */
  readonly metres?: number | undefined;
}

/** What a sheet takes from one reel. */
export interface ReelUse {
  readonly colour: string;
  readonly kind: WireKind;
  readonly pieces: number;
  /** Of all pieces. */
  readonly metres: number;
  /** With one mistake to spare: the longest piece once more. */
  readonly withSpare: number;
  /** What is on the reel; null where it is not known. */
  readonly has: number | null;
  /** Whether it reaches with one mistake to spare; null where it is not known. */
  readonly suffices: boolean | null;
}

interface Cut {
  readonly colour: string;
  readonly kind: WireKind;
  readonly cut: number;
}

const rounded = (metres: number) => Math.round(metres * 1000) / 1000;

const isSame = (a: Pick<Reel, "colour" | "kind">, b: Pick<Reel, "colour" | "kind">) =>
  a.colour === b.colour && a.kind === b.kind;

/** What is taken from every reel, in the order in which the cut list comes to them. Reels alike are one, as long as all of them. */
export function reelUses(cuts: readonly Cut[], reels: readonly Reel[]): ReelUse[] {
  const used = cuts.filter((cut, index) => cuts.findIndex((other) => isSame(other, cut)) === index);
  return used.map(({ colour, kind }) => {
    const lengths = cuts.filter((cut) => isSame(cut, { colour, kind })).map(({ cut }) => cut);
    const metres = lengths.reduce((sum, length) => sum + length, 0);
    const withSpare = metres + Math.max(...lengths);
    const own = reels.filter((reel) => isSame(reel, { colour, kind }));
    const isKnown = own.length > 0 && own.every((reel) => reel.metres !== undefined);
    const has = isKnown ? own.reduce((sum, reel) => sum + reel.metres!, 0) : null;
    return {
      colour,
      kind,
      pieces: lengths.length,
      metres: rounded(metres),
      withSpare: rounded(withSpare),
      has,
      suffices: has === null ? null : has >= withSpare - 1e-9,
    };
  });
}
