import type { Build } from "../build-file/schema.ts";
import type { Drawer } from "./drawer-schema.ts";
import { type Need, needsOf } from "./needs.ts";
import { type Piece, piecesOf } from "./pieces.ts";
import { misfitOf } from "./serves.ts";
import { takePieces } from "./take.ts";

/** A guard beside the drawer. */
export interface KnownGuard {
  readonly build: Pick<Build, "parts">;
  /** Whether its parts are soldered in and counted in the drawer: they are not free until it is taken apart. */
  readonly isSoldered: boolean;
}

/** A part of a guard, and what there is for it. */
export interface MatchedNeed {
  readonly need: Need;
  readonly piece: Piece | undefined;
  /** Where nothing is free for it: soldered guards that hold a piece that would serve. */
  readonly heldBy: readonly number[];
}

export interface DrawerMatch {
  /** What no soldered guard holds. */
  readonly free: readonly Piece[];
  /** By guard, in the order given. A soldered guard's own pieces; for any other what it would get, were it built alone. */
  readonly guards: readonly (readonly MatchedNeed[])[];
}

/** Pieces with the guard that holds them. */
interface Held {
  readonly piece: Piece;
  readonly guard: number;
}

/**
 * Soldered guards first, together, so that each scarce part sits where it suits best; then every other guard for itself.
 * @param most how many pieces of one kind are worth telling apart beyond what the guards take
 */
export function matchGuards(
  drawer: Pick<Drawer, "items" | "kits">,
  guards: readonly KnownGuard[],
  most = 1,
): DrawerMatch {
  const needs = guards.map(({ build }, index) => needsOf(build, index));
  const pieces = piecesOf(drawer, Math.max(most, needs.flat().length));
  const soldered = needs.filter((_, index) => guards[index]!.isSoldered).flat();
  const taken = takePieces(soldered, pieces);
  const held: Held[] = soldered.flatMap(({ guard }, i) =>
    taken[i] === undefined ? [] : [{ guard, piece: pieces[taken[i]]! }],
  );
  const heldIndices = new Set(taken);
  const free = pieces.filter((_, index) => !heldIndices.has(index));
  const pieceOf = new Map(soldered.map((need, i) => [need, taken[i] === undefined ? undefined : pieces[taken[i]]]));
  return {
    free,
    guards: needs.map((own, index) => {
      if (guards[index]!.isSoldered) return own.map((need) => ({ need, piece: pieceOf.get(need), heldBy: [] }));
      const alone = takePieces(own, free);
      return own.map((need, i) => {
        const piece = alone[i] === undefined ? undefined : free[alone[i]];
        return { need, piece, heldBy: piece ? [] : holdersFor(need, held) };
      });
    }),
  };
}

function holdersFor(need: Need, held: readonly Held[]): number[] {
  return [...new Set(held.filter(({ piece }) => misfitOf(need.part, piece) !== null).map(({ guard }) => guard))];
}
