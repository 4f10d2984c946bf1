import type { Build } from "../../build-file/schema.ts";
import { auditBuild } from "../audit/audit.ts";
import type { Finding } from "../audit/finding.ts";
import { ofHarness } from "../harness/audit-harness.ts";
import type { Reading } from "../meter/reading-taker.ts";
import { meterReadings } from "../meter/readings.ts";
import { CAUTIONS } from "./cautions.ts";
import { DEFAULT_SHEET_OPTIONS, type SheetOptions } from "./options.ts";
import { type Block, harnessBlocks, pickupBlocks } from "./order/blocks.ts";
import { jointsOf } from "./order/joints.ts";
import { searchOrder } from "./order/search-order.ts";
import type { Piece } from "./pieces/piece.ts";
import { piecesOf } from "./pieces/pieces.ts";
import { harnessOf } from "./pieces/wires-of.ts";
import { type SheetStage, SheetWriter } from "./sheet-writer.ts";
import { preparations } from "./text/preparations.ts";
import { type Weighed, weighed } from "./weighed.ts";
import type { Allowances } from "./wire/allowances.ts";
import { coloursOf } from "./wire/colours.ts";
import { type CutWire, cutList } from "./wire/cut-list.ts";
import { reachOn } from "./wire/reach.ts";
import { type ReelUse, reelUses } from "./wire/reels.ts";

/** What is soldered in one go, and tested before the next. */
export interface Sitting {
  readonly title: string;
  readonly stages: readonly SheetStage[];
  /** What the meter shows when it is done. */
  readonly readings: readonly Reading[];
  /** What the wiring of this sitting alone shows to be wrong. */
  readonly audit: readonly Finding[];
}

export interface BuildSheet {
  /** Cautions come first. */
  readonly cautions: readonly string[];
  readonly preparations: readonly string[];
  readonly pieces: readonly Piece[];
  readonly cuts: readonly CutWire[];
  readonly allowances: Allowances;
  readonly sittings: readonly Sitting[];
  readonly reels: readonly ReelUse[];
  readonly weighed: Weighed;
  readonly notes: readonly string[];
}

/** What is read and found on the whole guard, which the last sitting ends with. */
interface Finished {
  readonly readings: readonly Reading[];
  readonly audit: readonly Finding[];
}

function hasPickups(build: Build): boolean {
  return Object.values(build.parts).some(({ kind }) => kind === "pickup");
}

function notes(build: Build, clashes: readonly string[], reels: readonly ReelUse[]): string[] {
  return [
    ...clashes.map((colour) => `${colour} wire is both ground and hot here: mark the ends of one of them with tape.`),
    ...reels
      .filter(({ suffices }) => suffices === false)
      .map(
        ({ colour, kind, withSpare, has }) =>
          `The reel of ${colour} ${kind} wire is too short: ${has} m, and ${withSpare} m are wanted with one mistake to spare.`,
      ),
    ...(hasPickups(build)
      ? ["Lead colours of pickups differ between makers: go by the meter and the phase check."]
      : []),
    "Lengths are measured along the guard's edges from part to part; try the first wire before cutting the rest.",
  ];
}

function sittingsOf(
  build: Build,
  pieces: readonly Piece[],
  [harness, pickups]: readonly [readonly Block[], readonly Block[]],
  writer: SheetWriter,
  finished: Finished,
): Sitting[] {
  const first = harness.map((block) => writer.stage(block, true));
  const second = pickups.map((block) => writer.stage(block, false));
  if (!hasPickups(build)) return [{ title: "The harness", stages: first, ...finished }];
  const alone = harnessOf(build, pieces);
  return [
    {
      title: "The harness, without the pickups",
      stages: first,
      readings: meterReadings(alone).readings,
      audit: ofHarness(build, finished.audit),
    },
    { title: "The pickups", stages: second, ...finished },
  ];
}

/**
 * What to solder in which order: the harness first, testable alone, then the pickups. The same build always gives the same sheet.
 * @param finished what is read and found on the whole guard; worked out where left out
 */
export function buildSheet(
  build: Build,
  options: SheetOptions = DEFAULT_SHEET_OPTIONS,
  finished: Finished = { readings: meterReadings(build).readings, audit: auditBuild(build) },
): BuildSheet {
  const { allowances, reels, kinds, maxEnds, iron } = options;
  const reach = reachOn(build);
  const whole = piecesOf(build, reach, maxEnds);
  const { pieces } = whole;
  const joints = jointsOf(build, pieces);
  const inTradeOrder = harnessBlocks(build, joints);
  const order = searchOrder(inTradeOrder);
  const harness = order.order.map((index) => inTradeOrder[index]!);
  const pickups = pickupBlocks(build, joints);
  const colours = coloursOf(build, pieces, reels, kinds);
  const cuts = cutList(build, pieces, colours, reach, allowances);
  const writer = new SheetWriter({ build, cuts, iron, blocks: [...harness, ...pickups] });
  const sittings = sittingsOf(build, pieces, [harness, pickups], writer, finished);
  const used = reelUses(cuts, reels);
  return {
    cautions: CAUTIONS,
    preparations: preparations(
      build,
      pieces,
      cuts,
      sittings.flatMap(({ stages }) => stages.flatMap((stage) => stage.joints)),
    ),
    pieces,
    cuts,
    allowances,
    sittings,
    reels: used,
    weighed: weighed(whole, order, maxEnds),
    notes: notes(build, colours.clashes, used),
  };
}
