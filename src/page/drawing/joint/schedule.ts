import type { SheetAnswer } from "../../../contract/bench/bench.ts";

export type SheetSitting = SheetAnswer["sittings"][number];
export type SheetStage = SheetSitting["stages"][number];
export type SheetJoint = SheetStage["joints"][number];
export type SheetEnd = SheetJoint["ends"][number];
export type SheetPiece = SheetAnswer["pieces"][number];

/** A stop of a piece as a place: a lug by name, or the splice that goes by the name of its first lead. */
export interface Stop {
  readonly lug: string;
  readonly isSplice: boolean;
  /** The joint that makes it; undefined where the piece grows out of it. */
  readonly joint: number | undefined;
}

/** Every piece of a sheet with the joints that it is an end of. */
export class Schedule {
  readonly joints: readonly SheetJoint[];
  readonly pieces: readonly SheetPiece[];
  readonly #byLead: ReadonlyMap<string, SheetPiece>;
  readonly #byNumber: ReadonlyMap<number, SheetPiece>;
  readonly #joints = new Map<SheetPiece, Map<string, SheetJoint>>();

  constructor({ sittings, pieces }: Pick<SheetAnswer, "sittings" | "pieces">) {
    this.joints = sittings.flatMap(({ stages }) => stages.flatMap(({ joints }) => joints));
    this.pieces = pieces;
    this.#byNumber = new Map(pieces.map((piece) => [piece.number, piece]));
    this.#byLead = new Map(pieces.filter(({ grown }) => grown).map((piece) => [piece.stops[0]!, piece]));
    for (const joint of this.joints)
      for (const end of joint.ends) {
        const piece = this.pieceOf(end);
        this.#joints.set(piece, (this.#joints.get(piece) ?? new Map()).set(joint.at, joint));
      }
  }

  pieceOf({ lead, wire }: Pick<SheetEnd, "lead" | "wire">): SheetPiece {
    return lead === undefined ? this.#byNumber.get(wire!)! : this.#byLead.get(lead)!;
  }

  stopsOf(piece: SheetPiece): Stop[] {
    return piece.stops.map((lug, index) => {
      if (piece.grown && index === 0) return { lug, isSplice: false, joint: undefined };
      const joint = this.#joints.get(piece)!.get(lug)!;
      return { lug, isSplice: joint.kind === "splice", joint: joint.number };
    });
  }
}
