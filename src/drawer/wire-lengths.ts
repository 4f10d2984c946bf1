import type { WireKind } from "../build-file/wire-kinds.ts";
import type { Drawer } from "./drawer-schema.ts";

/** Wire of one kind and colour, in metres. */
export interface WireWanted {
  readonly kind: WireKind;
  readonly colour: string;
  readonly metres: number;
}

export interface WireCheck extends WireWanted {
  /** Of that, what the reels hold. */
  readonly there: number;
  readonly short: number;
}

const rounded = (metres: number) => Math.round(metres * 1000) / 1000;

/** Wanted wire against the reels: those of its colour first, then those of which nobody said the colour. */
export function checkWire(reels: Drawer["wires"], wanted: readonly WireWanted[]): WireCheck[] {
  const left = reels.map(({ length }) => length);
  const takeFrom = (fits: (reel: Drawer["wires"][number]) => boolean, metres: number) => {
    let still = metres;
    for (const [index, reel] of reels.entries()) {
      if (!fits(reel)) continue;
      const cut = Math.min(still, left[index]!);
      left[index]! -= cut;
      still -= cut;
    }
    return still;
  };
  const own = wanted.map(({ kind, colour, metres }) =>
    takeFrom((reel) => reel.kind === kind && reel.colour?.toLowerCase() === colour.toLowerCase(), metres),
  );
  return wanted.map((want, index) => {
    const short = rounded(takeFrom((reel) => reel.kind === want.kind && reel.colour === undefined, own[index]!));
    return { ...want, there: rounded(want.metres - short), short };
  });
}
