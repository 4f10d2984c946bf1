import type { PlanFormInput } from "../../build-file/expand.ts";
import { rawSettings, type SettingValue } from "../../build-file/settings.ts";
import { MAX_LABEL_CHARS } from "../../limits.ts";
import type { Surroundings } from "./candidate.ts";
import { type Contradiction, contradictionsIn } from "./contradictions.ts";
import type { Tried } from "./refine.ts";
import type { WishReached } from "./score.ts";
import { TOLD_OF_ONE } from "./search-steps.ts";
import { valueWords } from "./space/value-words.ts";
import { tradeOffsOf } from "./trade-offs.ts";
import type { WantedResult } from "./wanted.ts";
import type { Wish } from "./wish.ts";

/** A wish in a guard, with the setting in which it is heard. */
export interface WishTold extends Omit<WishReached, "cell"> {
  /** Null where the guard has no such place. */
  readonly settings: Readonly<Record<string, SettingValue>> | null;
  readonly label: string | null;
}

export interface GuardTold {
  /** The customary guard it grew from. */
  readonly from: string;
  readonly changes: readonly string[];
  /** Its pots, caps and treble bleed, in words. */
  readonly values: readonly string[];
  /** The guard as a plan, to be opened and kept. */
  readonly build: PlanFormInput;
  readonly cost: number;
  readonly met: number;
  readonly wishes: readonly WishTold[];
}

export interface WantedTold {
  readonly guards: readonly GuardTold[];
  readonly tradeOffs: readonly {
    readonly wish: number;
    readonly met: boolean;
    readonly text: string;
    readonly guard: GuardTold;
  }[];
  readonly contradictions: readonly Contradiction[];
  readonly shapes: WantedResult["shapes"];
  readonly trials: number;
  readonly exhaustive: boolean;
  readonly method: string;
}

export const COST_MEANING =
  "sum over all targets of the square of what is missed, in steps: a third of an octave for frequencies, for the rest as the figures say; 0 where every wish is met";

const TOLD = 10;

/** The best, not all of them the same guard with other winds; where some meet every wish, those alone. */
function toTell(ranked: readonly Tried[]): Tried[] {
  const counts = new Map<string, number>();
  const isMet = ranked[0]?.outcome.cost === 0;
  return ranked
    .filter(({ outcome }) => !isMet || outcome.cost === 0)
    .filter(({ candidate: { shape } }) => {
      const count = counts.get(shape.from) ?? 0;
      counts.set(shape.from, count + 1);
      return count < TOLD_OF_ONE;
    })
    .slice(0, TOLD);
}

function wishTold({ cell, ...wish }: WishReached, { candidate }: Tried): WishTold {
  if (!cell) return { ...wish, settings: null, label: null };
  return {
    ...wish,
    settings: rawSettings(candidate.controls, cell.settings),
    label: candidate.cells.label(cell),
  };
}

function guardTold(tried: Tried, surroundings: Surroundings): GuardTold {
  const { candidate, combination, outcome } = tried;
  const { from, changes } = candidate.shape;
  const plan = candidate.planOf(combination);
  const title = [from, ...changes].join("; ").slice(0, MAX_LABEL_CHARS);
  return {
    from,
    changes,
    values: valueWords(plan),
    build: { presolder: 1, title, plan, ...surroundings },
    cost: outcome.cost,
    met: outcome.wishes.filter(({ met }) => met).length,
    wishes: outcome.wishes.map((wish) => wishTold(wish, tried)),
  };
}

function methodWords({ shapes, trials, exhaustive, isMet }: WantedResult): string {
  const without =
    shapes.without > 0
      ? ` ${shapes.without} customary guards lack a position or a pickup wished for and were left out.`
      : "";
  const stepped = shapes.stepped > 0 ? ` To the best of them switches were added: ${shapes.stepped} guards more.` : "";
  const looked =
    shapes.tried === shapes.all
      ? `all ${shapes.all} wirings with their pickups`
      : `${shapes.tried} of ${shapes.all} wirings with their pickups`;
  const values = exhaustive
    ? `All values of all of them were tried, ${trials} guards.`
    : isMet
      ? `The best of them were tried with other values, ${trials} guards in all, and no more once enough of them met every wish.`
      : `The best of them were tried with other values, ${trials} guards in all; a better one may have been missed.`;
  return `${looked.charAt(0).toUpperCase()}${looked.slice(1)} were looked at. ${values}${stepped}${without}`;
}

/** What a search found, for whoever asked. */
export function wantedTold(result: WantedResult, wishes: readonly Wish[], surroundings: Surroundings): WantedTold {
  const { ranked, ledger, shapes, trials, exhaustive } = result;
  return {
    guards: toTell(ranked).map((tried) => guardTold(tried, surroundings)),
    tradeOffs: tradeOffsOf(ranked[0]!, ledger, result).map(({ wish, by, met, text }) => ({
      wish,
      met,
      text,
      guard: guardTold(by, surroundings),
    })),
    contradictions: contradictionsIn(wishes),
    shapes,
    trials,
    exhaustive,
    method: methodWords(result),
  };
}
