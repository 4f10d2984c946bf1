import { detailsOf } from "../../../build-file/connections.ts";
import type { Build } from "../../../build-file/schema.ts";
import type { WireKind } from "../../../build-file/wire-kinds.ts";
import { partOf } from "../pieces/loose-ends.ts";
import { isCutPiece, type Piece } from "../pieces/piece.ts";
import type { Allowances } from "./allowances.ts";
import type { WireColours } from "./colours.ts";
import type { Reach } from "./reach.ts";
import { READY } from "./wire-kinds.ts";

/** One wire to cut. All lengths in metres. */
export interface CutWire {
  readonly wire: number;
  readonly from: string;
  readonly to: string;
  /** Where a bared end goes on to, in order. */
  readonly onTo: readonly string[];
  readonly means: string;
  readonly kind: WireKind;
  readonly colour: string;
  /** From part to part along the guard's edges. */
  readonly run: number;
  /** To cut: run, slack or service loop, and both bared ends, rounded up to 5 mm; or the build's own length. */
  readonly cut: number;
  /** Bared at the first end and at the last. */
  readonly strips: readonly [number, number];
  /** How its ends are made ready. */
  readonly ready: string;
}

const ROUND_TO_METRES = 0.005;
const STRIP_ROUND_TO = 0.001;

function roundedUp(metres: number, step: number): number {
  return Math.round(Math.ceil(metres / step - 1e-9) * step * 1e6) / 1e6;
}

type Away = "jack" | "claw" | "foil";

/** What off the guard a wire goes to. */
function awayOf(build: Build, stops: readonly string[]): Away | undefined {
  for (const stop of stops) {
    const part = build.parts[partOf(stop)]!;
    if (part.kind === "jack") return "jack";
    if (part.kind !== "terminal") continue;
    if (part.role === "shield") return "foil";
    if (part.role === undefined || part.role === "claw") return "claw";
  }
  return undefined;
}

function lengthOf(
  run: number,
  isWithinPart: boolean,
  bared: number,
  away: Away | undefined,
  { slack, jackLoop, clawLoop, foilLength }: Allowances,
): number {
  if (isWithinPart) return run + bared;
  switch (away) {
    case "jack":
      return run + jackLoop + bared;
    case "claw":
      return run + clawLoop + bared;
    case "foil":
      return Math.max(foilLength, run + slack + bared);
    case undefined:
      return run + slack + bared;
  }
}

/** The build's own length, where the piece is one of its wires and goes nowhere else. */
function givenLength(build: Build, { wires, insteadOf }: Piece): number | undefined {
  return wires.length === 1 && insteadOf === undefined ? detailsOf(build.wires[wires[0]! - 1]!).length : undefined;
}

function cutWire(build: Build, piece: Piece, colours: WireColours, reach: Reach, allowances: Allowances): CutWire {
  const [from, to, ...onTo] = piece.stops as [string, string, ...string[]];
  const { colour, kind } = colours.byPiece.get(piece.number)!;
  const run = reach.run(from, to);
  const further = onTo.reduce((sum, lug, index) => sum + reach.straight(piece.stops[index + 1]!, lug), 0);
  const strips = [allowances.strip, roundedUp(allowances.strip + further, STRIP_ROUND_TO)] as const;
  const away = awayOf(build, piece.stops);
  const length = lengthOf(run, partOf(from) === partOf(to), strips[0] + strips[1], away, allowances);
  return {
    wire: piece.number,
    from,
    to,
    onTo,
    means: piece.means,
    kind,
    colour,
    run: Math.round(run * 1e4) / 1e4,
    cut: givenLength(build, piece) ?? roundedUp(length, ROUND_TO_METRES),
    strips,
    ready: READY[kind],
  };
}

/** The wires to cut, in the order of their numbers. */
export function cutList(
  build: Build,
  pieces: readonly Piece[],
  colours: WireColours,
  reach: Reach,
  allowances: Allowances,
): CutWire[] {
  return pieces.filter(isCutPiece).map((piece) => cutWire(build, piece, colours, reach, allowances));
}
