import type { Build } from "../../../build-file/schema.ts";
import { Controls } from "../../../build-file/settings.ts";
import { showQuantity } from "../../../build-file/show-quantity.ts";
import { REFERENCE_CELSIUS } from "../../meter/copper.ts";
import { LEADS_OHMS } from "../../meter/hobby-meter.ts";
import { ReadingTaker } from "../../meter/reading-taker.ts";
import type { Block } from "../order/blocks.ts";
import { isCutPiece, type Piece } from "../pieces/piece.ts";
import { wiresOf } from "../pieces/wires-of.ts";

/** Something to check before going on. */
export interface Check {
  readonly text: string;
  readonly between?: readonly [string, string];
  readonly low?: number | null;
  readonly high?: number | null;
}

function range(low: number | null, high: number | null): string {
  const words = (ohms: number) => showQuantity(ohms, "resistance", 3);
  if (low === null || high === null) return "open";
  return high <= LEADS_OHMS ? `under ${LEADS_OHMS} Ω` : `${words(low)} to ${words(high)}`;
}

function reading(text: string, between: readonly [string, string], low: number | null, high: number | null): Check {
  return { text: `${text}: ${range(low, high)}`, between, low, high };
}

/** Every wire that is finished now, from its first lug to its last; a part's own leads and legs go through the part. */
function continuity(finished: readonly Piece[]): Check[] {
  return finished
    .filter((piece) => isCutPiece(piece) || piece.means === "bent lug")
    .map(({ stops }) => {
      const [from, to] = [stops[0]!, stops.at(-1)!];
      return reading(`Continuity ${from} to ${to}`, [from, to], 0, LEADS_OHMS);
    });
}

/** The tracks of the stage's pots, as they read with what is connected so far. */
function tracks(build: Build, { parts }: Block, done: readonly Piece[]): Check[] {
  const pots = parts.filter((name) => build.parts[name]!.kind === "pot");
  if (pots.length === 0) return [];
  const taker = new ReadingTaker({ ...build, wires: wiresOf(build, done) }, REFERENCE_CELSIUS);
  const settings = new Controls(build).atRest;
  return pots.map((pot) => {
    const between = [`${pot}.1`, `${pot}.3`] as const;
    const { low, high } = taker.take({ label: pot, between, settings });
    return reading(`Track of ${pot}, lug 1 to lug 3, dial at 10`, between, low, high);
  });
}

function legsNear({ joints }: Block): Check[] {
  return joints
    .filter(({ kind, ends }) => kind === "lug" && ends.some(({ piece }) => piece.means === "leg"))
    .map(({ at }) => ({ text: `The cap or resistor leg at ${at} stands clear of every case; sleeve it.` }));
}

/**
 * The checks after a block of joints.
 * @param done pieces with every joint made so far
 * @param finished those whose last joint is in this block
 */
export function checksAfter(
  build: Build,
  block: Block,
  isHarness: boolean,
  done: readonly Piece[],
  finished: readonly Piece[],
): Check[] {
  return [
    {
      text: "Tug every end of this stage gently: nothing moves, and every joint is smooth and bright or evenly satin.",
    },
    ...legsNear(block),
    ...continuity(finished),
    ...(isHarness ? tracks(build, block, done) : []),
  ];
}
