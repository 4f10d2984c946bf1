import type { Point } from "../geometry/outline.ts";

export const KINDS = ["side", "depth", "between parts", "pole spacing", "bushing", "screw holes"] as const;
export const VERDICTS = ["goes in", "tight", "does not go in", "not said"] as const;
export type Verdict = (typeof VERDICTS)[number];

/** One thing to go in, and the room it has. */
export interface Clearance {
  /** The build's name of the part; "guard" for the guard itself. */
  readonly part: string;
  /** A cavity's or another part's name, or what else it is held to. */
  readonly against: string;
  readonly kind: (typeof KINDS)[number];
  /** Metres; below nothing it does not go in, null where something is not said. */
  readonly clearance: number | null;
  /** The tightest place, from the part to what it is held to, in the guard's frame. */
  readonly where: readonly [Point, Point] | null;
  /** Metres by which the clearance may be off. */
  readonly tolerance: number;
  readonly verdict: Verdict;
  readonly message: string;
}

/** Within its tolerance nothing can be said of a clearance but that it is tight. */
function verdictOf(clearance: number, tolerance: number): Verdict {
  if (clearance < -tolerance) return "does not go in";
  return clearance > tolerance ? "goes in" : "tight";
}

type Said = Omit<Clearance, "verdict" | "clearance" | "where"> & {
  readonly clearance: number;
  readonly where?: readonly [Point, Point];
};

/** To a ten thousandth of a millimetre, far below what anybody measures. */
const rounded = (metres: number) => Number(metres.toFixed(7)) || 0;

export function measured({ where, ...said }: Said): Clearance {
  const [clearance, tolerance] = [rounded(said.clearance), rounded(said.tolerance)];
  return { ...said, clearance, tolerance, where: where ?? null, verdict: verdictOf(clearance, tolerance) };
}

type Open = Pick<Clearance, "part" | "against" | "kind" | "message">;

export function notSaid(open: Open): Clearance {
  return { ...open, clearance: null, where: null, tolerance: 0, verdict: "not said" };
}

/** The least room first; what is not said comes last. */
export function leastFirst(clearances: readonly Clearance[]): Clearance[] {
  const rank = ({ clearance }: Clearance) => clearance ?? Number.POSITIVE_INFINITY;
  return clearances.toSorted((a, b) => (rank(a) === rank(b) ? 0 : rank(a) - rank(b)));
}
