import { type Checkpoint, NO_CHECKPOINT } from "../../checkpoint.ts";
import { faultAt } from "../../errors.ts";
import { MAX_WANTED_SHAPES, MAX_WANTED_TRIALS } from "../../limits.ts";
import type { Ledger } from "./ledger.ts";
import type { Tried } from "./refine.ts";
import { Wanted } from "./search-steps.ts";
import { missingPlaces } from "./space/missing-places.ts";
import { countOf, hasPlaces, shapesOf } from "./space/shapes.ts";
import type { WantedOptions, WantedQuestion } from "./wanted-question.ts";

export interface WantedResult {
  readonly ranked: readonly Tried[];
  readonly ledger: Ledger;
  /** Wirings with their pickups: all that there are of the guards begun with, tried, and left out since they lack a place wished for. */
  readonly shapes: { readonly all: number; readonly tried: number; readonly without: number; readonly stepped: number };
  /** Combinations of a shape and values that were tried. */
  readonly trials: number;
  /** Whether every shape of the guards begun with was tried with all values. */
  readonly exhaustive: boolean;
  /** Whether not everything was tried since there are guards that meet every wish. */
  readonly isMet: boolean;
}

/** Room for switches on top of shapes of which all were tried. */
const STEP_SHAPES = 80;
/** From which descents over pickups begin, where not all can be tried. */
const DESCENTS_FROM = 4;
/** Wirings, with their pickups, that all meet every wish and are enough to choose from. */
const ENOUGH = 5;

/**
 * Guards that come nearest to what is wished for: every wiring and pickup with its own values, the best of them with other values,
 * and the best of those with a switch more.
 * @throws PresolderError REQUEST_INVALID where no guard that may be tried can be built
 */
export function searchWanted(
  question: WantedQuestion,
  { checkpoint }: Checkpoint = NO_CHECKPOINT,
  { mostShapes = MAX_WANTED_SHAPES, mostTrials = MAX_WANTED_TRIALS, enough = ENOUGH }: WantedOptions = {},
): WantedResult {
  const starts = question.starts.filter(({ plan }) => hasPlaces(plan, question.wishes));
  if (starts.length === 0) throw faultAt("REQUEST_INVALID", "starts", missingPlaces(question.starts, question.wishes));
  const all = starts.reduce((count, start) => count + countOf(start, question.pickups), 0);
  const isAll = all <= mostShapes;
  const room = mostShapes + (isAll ? STEP_SHAPES : 0);
  const wanted = new Wanted(question, { checkpoint }, { mostShapes: room, mostTrials, enough });
  for (const start of starts) {
    if (isAll) for (const shape of shapesOf(start, question.pickups)) wanted.look(shape);
    else wanted.look(shapesOf(start, question.pickups)[0]!);
  }
  if (!isAll) for (const { candidate } of wanted.ledger.ranked().slice(0, DESCENTS_FROM)) wanted.descend(candidate);
  const looked = wanted.shapes;
  if (!isAll) wanted.sketch();
  wanted.refine(wanted.ledger.ranked().map(({ candidate }) => candidate));
  const exhaustive = isAll && wanted.isEveryValueTried;
  const isMet = !exhaustive && (wanted.ledger.ranked()[0]?.outcome.cost ?? 1) === 0;
  if (question.steps && !isMet) wanted.step();
  const ranked = wanted.ledger.ranked();
  if (ranked.length === 0) throw faultAt("REQUEST_INVALID", "starts", "none of them can be wired with these pickups");
  return {
    ranked,
    ledger: wanted.ledger,
    shapes: { all, tried: looked, without: question.starts.length - starts.length, stepped: wanted.stepped },
    trials: wanted.trials,
    exhaustive,
    isMet,
  };
}
