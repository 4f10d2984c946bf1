import { type Settings, settingsKey } from "../../build-file/settings.ts";
import { powerDecibels } from "../../decibels.ts";
import { faultAt } from "../../errors.ts";
import { fullControls } from "../../response/labels/position-coils.ts";
import { mainPositions } from "../main-positions.ts";
import type { Target } from "./balance.ts";
import { expectTold } from "./enough-told.ts";
import { fitLaws } from "./fit-laws.ts";
import { heightCounts } from "./height-counts.ts";
import type { HeightsTold } from "./heights-told.ts";
import { leftOver, pullWarnings, reachWarnings } from "./heights-words.ts";
import { type Kept, keepRows } from "./kept-rows.ts";
import { pickupTold } from "./pickup-told.ts";
import { figuresAfter, figuresNow } from "./position-figures.ts";
import { PositionReader } from "./positions.ts";
import type { HeightsQuestion } from "./question.ts";
import { groupsIn, type Position } from "./recorded.ts";
import type { MountedPickup } from "./screws.ts";
import { solveTurns } from "./solve-turns.ts";

/** Common practice, no source. */
const HOW_TO_RECORD =
  "Record every position at two heights of the pickups: pluck the open strings one after another, each three times, let each ring for a second and a half and damp it before the next; read every string's level from the recording, and measure both gaps of every pickup with the outer strings pressed at the last fret. No law of distance is assumed: how much a turn changes is read from your own recordings.";

function referenceIndex(positions: readonly Position[], reference: Settings | null): number | null {
  if (!reference) return null;
  const index = positions.findIndex(({ settings }) => settingsKey(settings) === settingsKey(reference));
  if (index >= 0) return index;
  const known = positions.map(({ label }) => label).join("; ");
  throw faultAt("REQUEST_INVALID", "target.reference", `was not among the positions; expected one of: ${known}`);
}

/** The model's own levels in every position of the main switch: what the wiring alone makes of equal strings. */
function modelAnswer(question: HeightsQuestion): HeightsTold {
  const reader = new PositionReader(question.build);
  const settings = mainPositions(reader.controls).map(({ settings: own }) => fullControls(question.build, own));
  const positions = settings
    .map((own) => reader.positionIn(own, []))
    .filter((position) => groupsIn(position, 1).length > 0);
  const now = positions.map(({ energies }) => energies.map((matrix) => powerDecibels(matrix[0]!)));
  const target = { reference: referenceIndex(positions, question.reference), withStrings: question.withStrings };
  return {
    ...nothingTold("model", question.pickups),
    positions: positions.length > 0 ? figuresNow(positions, reader.controls, now, target) : [],
    next: [
      "These are the build file's levels, which know neither your heights nor your strings' steel: they show what the wiring and the places under the strings make of equal pickups.",
      HOW_TO_RECORD,
    ],
  };
}

function nothingTold(basis: HeightsTold["basis"], pickups: readonly MountedPickup[]) {
  const assumed = pickups.flatMap((pickup) => pickup.assumed);
  return { basis, precision: null, pickups: [], balanced: null, left: [], warnings: [], assumed };
}

/** Levels recorded at one height: how far off they are, and no turns. */
function oneHeightAnswer(question: HeightsQuestion, { reader, recorded }: Kept, target: Target): HeightsTold {
  const now = recorded.positions.map((_, k) => {
    const own = recorded.observations.filter(({ position }) => position === k);
    return Array.from(
      { length: recorded.stringCount },
      (_, s) => own.reduce((sum, { levelsDb }) => sum + levelsDb[s]!, 0) / own.length,
    );
  });
  return {
    ...nothingTold("one height", question.pickups),
    positions: figuresNow(recorded.positions, reader.controls, now, target),
    next: [HOW_TO_RECORD],
  };
}

const isWithinBound = (bound: number) => (off: number | null) => Math.abs(off ?? 0) <= bound;

function turnsAnswer(question: HeightsQuestion, kept: Kept, target: Target, checkpoint: () => void): HeightsTold {
  const { pickups, silent, recorded, reader } = kept;
  const fitted = fitLaws(recorded, checkpoint);
  expectTold(recorded, fitted);
  const solved = solveTurns(recorded, pickups, fitted, target, checkpoint);
  const positions = figuresAfter({
    recorded,
    fitted,
    controls: reader.controls,
    target,
    before: pickups.map(({ gaps }) => gaps),
    after: solved.map(({ gaps }) => gaps),
  });
  const isFine = isWithinBound(question.withinDb);
  return {
    basis: "recordings",
    precision: fitted.sigmaDb,
    pickups: solved.map((each, index) => pickupTold(each, index, fitted, recorded.stringCount)),
    positions,
    balanced: {
      positions: positions.every(({ offAfter }) => isFine(offAfter)),
      strings: positions.every(({ strings }) => strings.every(({ offAfter }) => isFine(offAfter))),
    },
    left: leftOver(positions, solved, question.withinDb, question.withStrings),
    warnings: [...pullWarnings(solved), ...reachWarnings(solved, recorded)],
    next: [
      ...silent.map(
        ({ name }) =>
          `${name} sounds in none of the positions recorded: record one in which it does, and its screws are told too.`,
      ),
      "Turn all screws as told, tune, record every position once more and ask again with all recordings: the law is then known at the new height, too.",
    ],
    assumed: pickups.flatMap(({ assumed }) => assumed),
  };
}

/**
 * How far to turn every pickup's screws so that positions and strings are equally loud. From recordings at two heights or more;
 * from less, how far off the levels are and what to record.
 *
 * @param checkpoint called now and then; may throw to give the work up
 * @throws PresolderError DATA_INSUFFICIENT where recordings do not tell a pickup's law, REQUEST_INVALID for a reference or a
 * setting that is none
 */
export function heightsOf(question: HeightsQuestion, checkpoint: () => void = () => {}): HeightsTold {
  if (question.rows.length === 0) return modelAnswer(question);
  const kept = keepRows(question);
  const reference = referenceIndex(kept.recorded.positions, question.reference);
  const target: Target = { reference, withStrings: question.withStrings };
  if (heightCounts(kept.recorded).every((count) => count < 2)) return oneHeightAnswer(question, kept, target);
  return turnsAnswer(question, kept, target, checkpoint);
}
