import type { LugNumber } from "./lug-space.ts";
import { type End, isSplice, otherEnd, type Strand } from "./strands.ts";

/** One way to use a strand again: it stays where it is at one end, and is opened at the other. */
export interface Use {
  readonly stays: End;
  readonly opens: End;
}

/** A strand that cannot stay as it lies. */
export interface Misplaced {
  readonly strand: Strand;
  /** Ends to open where it is not used again. */
  readonly idle: readonly End[];
  readonly uses: readonly Use[];
  /** Whether using it again costs no joint more than taking it out. */
  readonly free: boolean;
}

export interface SortedStrands {
  readonly kept: readonly Strand[];
  /** They join parts that go out to one another alone. */
  readonly leaving: readonly Strand[];
  readonly misplaced: readonly Misplaced[];
}

const ENDS = [0, 1] as const;

/** A bent lug reaches its own case alone. */
function reachesFurther({ means, grown }: Strand): boolean {
  return means !== "bent lug" || !(grown[0] || grown[1]);
}

/** Both lugs stay, but must not meet; or meet elsewhere too. */
export function between(strand: Strand): Misplaced {
  if (isSplice(strand))
    return { strand, idle: [1], uses: ENDS.map((stays) => ({ stays, opens: 1 as const })), free: false };
  const root = ENDS.find((end) => strand.grown[end]);
  if (root === undefined)
    return { strand, idle: ENDS, uses: ENDS.map((stays) => ({ stays, opens: otherEnd(stays) })), free: true };
  const opens = otherEnd(root);
  return { strand, idle: [opens], uses: reachesFurther(strand) ? [{ stays: root, opens }] : [], free: false };
}

/** One lug goes out with its part; a wire may go out hanging on it. */
function towards(strand: Strand, stays: End): Misplaced {
  const leaves = otherEnd(stays);
  const splice = isSplice(strand);
  if (strand.grown[leaves] && !splice) return { strand, idle: [stays], uses: [], free: false };
  const idle = strand.grown[stays] && !splice ? leaves : stays;
  return {
    strand,
    idle: [idle],
    uses: reachesFurther(strand) ? [{ stays, opens: splice ? stays : leaves }] : [],
    free: false,
  };
}

/** @param netOf the net as wanted of a lug, undefined where its part goes out */
export function sortStrands(strands: readonly Strand[], netOf: (lug: LugNumber) => number | undefined): SortedStrands {
  const [kept, leaving, misplaced]: [Strand[], Strand[], Misplaced[]] = [[], [], []];
  for (const strand of strands) {
    const [a, b] = strand.lugs.map(netOf);
    if (a === undefined && b === undefined) leaving.push(strand);
    else if (a === undefined) misplaced.push(towards(strand, 1));
    else if (b === undefined) misplaced.push(towards(strand, 0));
    else if (a === b) kept.push(strand);
    else misplaced.push(between(strand));
  }
  return { kept, leaving, misplaced };
}
