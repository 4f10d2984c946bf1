import { type Connection, detailsOf, isCut } from "../../build-file/connections.ts";
import type { Build } from "../../build-file/schema.ts";
import { coloursOf } from "./colours.ts";
import { layoutOf, type Place } from "./layout.ts";

/** What is added to every wire, in metres. */
export interface Allowances {
  /** Slack over the whole wire. */
  readonly slack: number;
  /** Bared at each end. */
  readonly strip: number;
}

export const DEFAULT_ALLOWANCES: Allowances = { slack: 0.02, strip: 0.006 };

/** One wire to cut. */
export interface CutWire {
  readonly connection: number;
  readonly from: string;
  readonly to: string;
  readonly kind: string;
  readonly colour: string;
  /** Metres from part to part along the guard's edges. */
  readonly run: number;
  /** Metres to cut: run, slack and both strips, rounded up to 5 mm; or the build's own length. */
  readonly cut: number;
  readonly strip: number;
}

/** Between two lugs of one part. */
const WITHIN_PART_METRES = 0.012;
const ROUND_TO_METRES = 0.005;

function alongEdges(a: Place, b: Place): number {
  return Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
}

function roundedUp(metres: number): number {
  return Math.round(Math.ceil(metres / ROUND_TO_METRES - 1e-9) * ROUND_TO_METRES * 1e6) / 1e6;
}

/** The wires to cut, in the build's order. */
export function cutList(build: Build, connections: readonly Connection[], { slack, strip }: Allowances): CutWire[] {
  const places = layoutOf(build);
  const cut = connections.filter(isCut);
  const { byConnection } = coloursOf(build, cut);
  return cut.map(({ number, from, to, means }) => {
    const [a, b] = [from.split(".")[0]!, to.split(".")[0]!];
    const run = a === b ? WITHIN_PART_METRES : Math.max(WITHIN_PART_METRES, alongEdges(places.get(a)!, places.get(b)!));
    const given = detailsOf(build.wires[number - 1]!).length;
    return {
      connection: number,
      from,
      to,
      kind: means,
      colour: byConnection.get(number)!,
      run: Math.round(run * 1e4) / 1e4,
      cut: given ?? roundedUp(run + slack + 2 * strip),
      strip,
    };
  });
}
