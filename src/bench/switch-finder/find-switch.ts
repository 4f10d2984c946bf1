import { type BodyGuess, bodyGuesses } from "./bodies/body-guesses.ts";
import { BEEPER_CAUTIONS } from "./cautions.ts";
import { type FoundTable, foundTable } from "./found/found-table.ts";
import { groupsOf, positionsOf } from "./found/poles.ts";
import { shortingTest } from "./found/shorting.ts";
import { buildNames } from "./found/switch-part.ts";
import { inGuard } from "./guard/in-guard.ts";
import { Heard } from "./heard.ts";
import { familiesOf, starsOf } from "./known/families.ts";
import { MOST_LISTED_LUGS } from "./known/labellings.ts";
import { ownVerdict } from "./own/own-search.ts";
import { OwnTable } from "./own/own-table.ts";
import type { SwitchQuestion } from "./question.ts";
import { ListedSearch } from "./search/listed-search.ts";
import { StarSearch } from "./search/star-search.ts";
import { FITS_NONE, mostMisheard, type NextTouch, type Verdict } from "./search/verdict.ts";
import { summaryOf, whyOf } from "./told-words.ts";
import { type ToldTouch, touchesOf } from "./touches.ts";

function knownVerdict(question: SwitchQuestion, touches: readonly ToldTouch[], guesses: readonly BodyGuess[]): Verdict {
  const { lugs, positions, errors } = question;
  const families = familiesOf(lugs.length, positions);
  const [family] = families;
  if (!family) return FITS_NONE;
  if (lugs.length <= MOST_LISTED_LUGS) return new ListedSearch(lugs.length, positions, guesses, errors).judge(touches);
  const stars = starsOf(family);
  return stars ? new StarSearch(lugs.length, positions, stars, guesses).judge(touches) : FITS_NONE;
}

/** What the beeps say of the switch, and whether it can be a known one. */
export function judgeTouches(question: SwitchQuestion): {
  verdict: Verdict;
  isKnown: boolean;
  guesses: BodyGuess[];
  touches: ToldTouch[];
} {
  const { lugs, positions, errors } = question;
  const touches = touchesOf(question);
  const guesses = bodyGuesses(lugs, positions);
  const known = knownVerdict(question, touches, guesses);
  const isKnown = known.misheard <= mostMisheard(errors);
  return { verdict: isKnown ? known : ownVerdict(lugs.length, positions, touches), isKnown, guesses, touches };
}

function nextAnswer({ lugs }: SwitchQuestion, next: NextTouch | undefined, isKnown: boolean) {
  if (!next) return null;
  return {
    between: [lugs[next.a]!.name, lugs[next.b]!.name] as [string, string],
    again: next.again,
    why: whyOf(next, isKnown),
    outcomes: next.outcomes
      .filter(({ share }) => share > 0)
      .map(({ on, share }) => ({ positions: positionsOf(on), share })),
  };
}

function shortingAnswer({ lugs, positions }: SwitchQuestion, verdict: Verdict) {
  const [table] = verdict.tables;
  const test = verdict.done && table && shortingTest(table.contacts, lugs.length, positions);
  if (!test) return null;
  const between: [string, string] = [lugs[test.a]!.name, lugs[test.b]!.name];
  const [before, after] = test.betweenPositions;
  return {
    between,
    betweenPositions: [before, after] as [number, number],
    text: `Touch ${between[0]} and ${between[1]} and move the handle slowly from position ${before} to ${after}: a beep on the way says that it makes before it breaks (shorting).`,
  };
}

/** Moves to the lugs as the part calls them. */
function partMoves(
  { known }: FoundTable,
  lugs: SwitchQuestion["lugs"],
  moves: SwitchQuestion["moves"],
): Record<string, string> {
  const names = buildNames(lugs);
  const named = new Map(lugs.map(({ name }, index) => [name, known?.lugs[name] ?? names[index]!]));
  return Object.fromEntries(Object.entries(moves).map(([lug, to]) => [lug, named.get(to)!]));
}

function touchedPairs(touches: readonly ToldTouch[], heard: Heard): number {
  return new Set(
    touches.filter(({ a, b }) => heard.isTold(a, b)).map(({ a, b }) => `${Math.min(a, b)} ${Math.max(a, b)}`),
  ).size;
}

/** Touches that cannot all be right, those included that the same two lugs outvoted since. */
function doubtfulOf(verdict: Verdict, touches: readonly ToldTouch[], { lugs, on, off }: Heard): number[] {
  const outvoted = touches.filter((touch) => {
    const pair = touch.a * lugs + touch.b;
    return (on[pair]! & touch.off) !== 0 || (off[pair]! & touch.on) !== 0;
  });
  return [...new Set([...verdict.contradictions, ...outvoted.map(({ index }) => index)])].sort((a, b) => a - b);
}

/**
 * What an unknown switch is, from where a continuity beeper beeps; and the two lugs to touch next.
 * Known switches are told apart among all ways in which their lugs may lie; where none beeps so, the table is found pair by pair.
 */
export function findSwitch(question: SwitchQuestion) {
  const { lugs, positions, source, part, moves } = question;
  const { verdict, isKnown, guesses, touches } = judgeTouches(question);
  const heard = new Heard(lugs.length, positions, touches);
  const tables = verdict.tables.map((table) => foundTable(question, table, guesses));
  const shown = tables.reduce((sum, { probability }) => sum + probability, 0);
  const pairs = (lugs.length * (lugs.length - 1)) / 2;
  const tried = touchedPairs(touches, heard);
  const joined = groupsOf(new OwnTable(heard).contacts(), lugs.length, positions);
  const [best] = tables;
  const found =
    best?.part && source && part !== undefined
      ? inGuard(source, part, best.part, partMoves(best, lugs, moves))
      : undefined;
  return {
    done: verdict.done,
    isKnown,
    text: summaryOf(question, verdict, isKnown, best?.known?.title, pairs - tried),
    tables,
    further: {
      tables: verdict.count === undefined ? null : verdict.count - tables.length,
      probability: Math.max(0, 1 - shown),
    },
    next: verdict.done ? null : nextAnswer(question, verdict.next, isKnown),
    shortingTest: shortingAnswer(question, verdict),
    joined: joined.map((groups) => groups.map((group) => group.map((lug) => lugs[lug]!.name))),
    tried,
    untouched: pairs - tried,
    remaining: { tables: verdict.count ?? null, bits: verdict.bits ?? null },
    contradictions: doubtfulOf(verdict, touches, heard).map((index) => ({
      beep: index,
      between: [...question.beeps[index]!.between] as [string, string],
    })),
    cautions: [...BEEPER_CAUTIONS],
    guard: found?.guard ?? null,
    asks: (found?.asks ?? []).map(({ lug, wires }) => ({ lug, wires: [...wires] })),
  };
}
