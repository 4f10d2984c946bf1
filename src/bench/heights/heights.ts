import type { Settings } from "../../build-file/settings.ts";
import { settingsKey } from "../../build-file/settings.ts";
import { powerDecibels } from "../../decibels.ts";
import { faultAt } from "../../errors.ts";
import { fullControls } from "../../response/labels/position-coils.ts";
import { mainPositions } from "../main-positions.ts";
import type { Target } from "./balance.ts";
import { dbPerMillimetre } from "./distance-law.ts";
import { expectTold } from "./enough-told.ts";
import { type FittedLaws, fitLaws, heightCounts } from "./fit-laws.ts";
import { gapUnder } from "./gaps.ts";
import { lawWords, leftOver, pullWarnings, reachWarnings } from "./heights-words.ts";
import { relativePull } from "./magnet-pull.ts";
import { figuresAfter, figuresNow, type PositionFigures } from "./position-figures.ts";
import { PositionReader } from "./positions.ts";
import type { HeightsQuestion } from "./question.ts";
import { groupsIn, type Position, type Recorded } from "./recorded.ts";
import { gapOf, type MountedPickup, SIDES, type Side, TURN_STEP } from "./screws.ts";
import { type SolvedPickup, type SolvedScrew, solveTurns } from "./solve-turns.ts";
import { type Direction, moveWords } from "./turn-words.ts";

export interface ScrewTold {
  readonly side: Side;
  /** Metres. */
  readonly gapBefore: number;
  readonly gapAfter: number;
  /** Metres, more is lower. */
  readonly travel: number;
  /** ± metres, 95 %. */
  readonly travelError: number;
  /** Whole eighths, more is lower; null where the pitch is not known. */
  readonly turns: number | null;
  readonly turnsError: number | null;
  readonly direction: Direction;
  readonly clockwise: boolean;
  readonly stoppedBy: "min" | "max" | null;
  readonly text: string;
}

export interface PickupTold {
  readonly name: string;
  readonly law: {
    readonly exponent: number;
    /** ±, 95 %. */
    readonly exponentError: number;
    /** Metres; 0 where the recordings ask for none. */
    readonly offset: number;
    /** dB that a millimetre lower takes, at the gap as it is. */
    readonly perMillimetre: number;
    readonly text: string;
  };
  readonly screws: readonly ScrewTold[];
  /** After over before, on either side, by the field on a rod magnet's axis. */
  readonly pull: { readonly bass: number; readonly treble: number };
}

export interface HeightsTold {
  /** What the levels are: the build's alone, recorded at one height, or recorded at several. */
  readonly basis: "model" | "one height" | "recordings";
  /** Of one string's level in one recording, in dB. */
  readonly precision: number | null;
  readonly pickups: readonly PickupTold[];
  readonly positions: readonly PositionFigures[];
  /** Whether all is within the bound wanted once the screws are turned; null where no turns are told. */
  readonly balanced: { readonly positions: boolean; readonly strings: boolean } | null;
  readonly left: readonly string[];
  readonly warnings: readonly string[];
  readonly next: readonly string[];
  readonly assumed: readonly string[];
}

/** A stretch of rod or drill shank; common practice, no source. */
const HOW_TO_RECORD =
  "Record every position at two heights of the pickups: pluck the open strings one after another, each three times, let each ring for a second and a half and damp it before the next; take every level with /api/string-levels, and measure both gaps of every pickup with the outer strings pressed at the last fret. No law of distance is assumed: how much a turn changes is read from your own recordings.";

interface Kept {
  readonly reader: PositionReader;
  /** Pickups that sound in what was recorded. */
  readonly pickups: readonly MountedPickup[];
  readonly silent: readonly MountedPickup[];
  readonly recorded: Recorded;
}

/** Rows by position, with the pickups that any of them lets through. */
function keep({ build, pickups, rows }: HeightsQuestion): Kept {
  const reader = new PositionReader(build);
  const keys = [...new Set(rows.map(({ settings }) => settingsKey(settings)))];
  const settingsOf = keys.map((key) => rows.find(({ settings }) => settingsKey(settings) === key)!.settings);
  const names = pickups.map(({ name }) => name);
  const heard = new Set(
    settingsOf.flatMap((settings) => groupsIn(reader.positionIn(settings, names), names.length + 1)),
  );
  const sounds = pickups.map((_, index) => heard.has(index));
  const kept = pickups.filter((_, index) => sounds[index]);
  const movable = kept.map(({ name }) => name);
  const observations = rows.map(({ settings, gaps, levelsDb }) => ({
    position: keys.indexOf(settingsKey(settings)),
    gaps: gaps.filter((_, index) => sounds[index]),
    levelsDb,
  }));
  const positions = settingsOf.map((settings) => reader.positionIn(settings, movable));
  for (const [index, position] of positions.entries()) expectSound(rows, keys, index, position, movable.length + 1);
  return {
    reader,
    pickups: kept,
    silent: pickups.filter((_, index) => !sounds[index]),
    recorded: { pickups: movable, stringCount: reader.stringCount, positions, observations },
  };
}

/** @throws PresolderError REQUEST_INVALID where the wiring lets nothing through */
function expectSound(
  rows: HeightsQuestion["rows"],
  keys: readonly string[],
  index: number,
  position: Position,
  size: number,
): void {
  if (groupsIn(position, size).length > 0) return;
  const row = rows.findIndex(({ settings }) => settingsKey(settings) === keys[index]);
  const message = `${position.label}: no pickup reaches the jack there; expected a setting that sounds`;
  throw faultAt("REQUEST_INVALID", `levels.${row}.settings`, message);
}

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

function screwTold({ pickup }: SolvedPickup, screw: SolvedScrew): ScrewTold {
  const { side, travel, travelError } = screw;
  const pitch = pickup.pitchMetres[side];
  // Both pitches are needed for either, since a pickup tilts about its other screw.
  const isKnown = pickup.pitchMetres.bass !== undefined && pickup.pitchMetres.treble !== undefined;
  const turns = isKnown && pitch !== undefined ? Math.round(travel / pitch / TURN_STEP) * TURN_STEP : null;
  const least = turns === null ? 5e-6 : TURN_STEP * pitch! * 0.5;
  const direction = Math.abs(travel) < least ? "stays" : travel > 0 ? "down" : "up";
  const clockwise = (direction === "down") === pickup.clockwiseLowers;
  return {
    ...screw,
    turns,
    turnsError: turns === null ? null : travelError / pitch!,
    direction,
    clockwise,
    text: moveWords({ side, direction, turns, travelMetres: travel, clockwise }),
  };
}

function pickupTold(solved: SolvedPickup, index: number, fitted: FittedLaws, stringCount: number): PickupTold {
  const { pickup, gaps, screws } = solved;
  const law = fitted.laws[index]!;
  const middle = gapUnder(pickup.gaps, (stringCount + 1) / 2, stringCount);
  const pull = (side: Side) =>
    relativePull(pickup.magnet, gapOf(gaps, side)) / relativePull(pickup.magnet, gapOf(pickup.gaps, side));
  return {
    name: pickup.name,
    law: {
      exponent: law.exponent,
      exponentError: fitted.t * fitted.exponentErrors[index]!,
      offset: law.offsetMetres,
      perMillimetre: dbPerMillimetre(law, middle),
      text: lawWords(pickup.name, fitted, index, middle),
    },
    screws: screws.map((screw) => screwTold(solved, screw)),
    pull: { bass: pull(SIDES[0]), treble: pull(SIDES[1]) },
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
  const kept = keep(question);
  const reference = referenceIndex(kept.recorded.positions, question.reference);
  const target: Target = { reference, withStrings: question.withStrings };
  if (heightCounts(kept.recorded).every((count) => count < 2)) return oneHeightAnswer(question, kept, target);
  return turnsAnswer(question, kept, target, checkpoint);
}
