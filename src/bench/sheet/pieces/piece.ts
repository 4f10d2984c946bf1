/** What a piece is made of: an end that comes with its part, or something cut, bent or braided. */
export const PIECE_MEANS = ["lead", "leg", "bent lug", "wire", "jumper", "bus wire", "braid"] as const;

export type PieceMeans = (typeof PIECE_MEANS)[number];

/** One physical thing with solder on it: a lead, a leg, a wire. */
export interface Piece {
  /** From 1. */
  readonly number: number;
  readonly means: PieceMeans;
  /** Where it goes, one after another: lugs, or a splice by the name of its first lead. Two, or more where a bared end runs on. */
  readonly stops: readonly string[];
  /** Whether it grows out of its first stop, with nothing to solder there. */
  readonly grown: boolean;
  /** Numbers, from 1, of the build's wires that it stands for; none for a wire that only serves a second destination. */
  readonly wires: readonly number[];
  /** Where the build has it end, where that is somewhere else of the same net. */
  readonly insteadOf?: string;
}

/** A piece not numbered yet, while it is decided where its ends land. */
export interface Draft {
  means: PieceMeans;
  stops: string[];
  readonly grown: boolean;
  readonly wires: readonly number[];
  insteadOf?: string;
}

/** The stops of a piece that are soldered. */
export function solderedStops({ stops, grown }: Pick<Piece, "stops" | "grown">): readonly string[] {
  return grown ? stops.slice(1) : stops;
}

/** Whether a piece is cut from a reel, and so has a length and a colour. */
export function isCutPiece({ means }: Pick<Piece, "means">): boolean {
  return means === "wire" || means === "jumper" || means === "bus wire" || means === "braid";
}
