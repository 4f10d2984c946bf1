import type { Build } from "../../../build-file/schema.ts";
import type { Sitting } from "../landing/problem.ts";
import { isCase, loosenessOf, partOf } from "../pieces/loose-ends.ts";
import { type Piece, solderedStops } from "../pieces/piece.ts";

export type JointKind = "case" | "lug" | "splice";

/** One piece at one joint. */
export interface JointEnd {
  readonly piece: Piece;
  /** The lug that it comes from: of a lead or leg its own, of a wire the one before. */
  readonly from: string;
  /** Where its bared end or leg goes on to. */
  readonly onTo?: string;
  /** Whether it is a bared end or leg that comes on from a joint before. */
  readonly comesOn: boolean;
}

/** One place to heat, once in its sitting, with everything that meets there. */
export interface Joint {
  readonly kind: JointKind;
  /** A lug; of a splice the first of its leads. */
  readonly at: string;
  readonly sitting: Sitting;
  readonly ends: readonly JointEnd[];
  /** Whether the sitting before has soldered something here. */
  readonly isAgain: boolean;
}

/** A piece is soldered with the pickups where it is one's lead, or goes to a splice of them. */
export function sittingOfPiece(build: Build, { stops }: Pick<Piece, "stops">): Sitting {
  return stops.some((stop) => build.parts[partOf(stop)]!.kind === "pickup") ? 2 : 1;
}

function endsOf(piece: Piece): { at: string; end: JointEnd }[] {
  const { stops } = piece;
  return solderedStops(piece).map((at) => {
    const index = stops.indexOf(at, piece.grown ? 1 : 0);
    const from = index === 0 ? stops[1]! : stops[index - 1]!;
    const onTo = index > 0 && index < stops.length - 1 ? stops[index + 1]! : undefined;
    return { at, end: { piece, from, ...(onTo === undefined ? {} : { onTo }), comesOn: index > 1 } };
  });
}

function kindOf(build: Build, at: string): JointKind {
  if (loosenessOf(build, at) !== undefined) return "splice";
  return isCase(build, at) ? "case" : "lug";
}

/** Every joint of both sittings, in the order of their first piece. */
export function jointsOf(build: Build, pieces: readonly Piece[]): Joint[] {
  const joints = new Map<string, { at: string; sitting: Sitting; ends: JointEnd[] }>();
  for (const piece of pieces)
    for (const { at, end } of endsOf(piece)) {
      const sitting = sittingOfPiece(build, piece);
      const key = `${at} ${sitting}`;
      const joint = joints.get(key) ?? { at, sitting, ends: [] };
      joint.ends.push(end);
      joints.set(key, joint);
    }
  return [...joints.values()].map((joint) => ({
    ...joint,
    kind: kindOf(build, joint.at),
    isAgain: joint.sitting === 2 && joints.has(`${joint.at} 1`),
  }));
}
