import { type BodyGuess, differentTables } from "../bodies/body-guesses.ts";
import { bitsOf, Heard } from "../heard.ts";
import type { Contacts } from "../known/known-specs.ts";
import { type LastThrow, starCount } from "../stars/star-count.ts";
import { type PairOdds, StarOdds } from "../stars/star-odds.ts";
import { type StarFamily, type StarState, starState } from "../stars/star-state.ts";
import type { ToldTouch } from "../touches.ts";
import { entropyOf, mostTelling, outcomesOf } from "./most-telling.ts";
import { FITS_NONE, type LikelyTable, type NextTouch, SITTING_SHARE, toldOnce, type Verdict } from "./verdict.ts";

type Guess = ReturnType<typeof differentTables>[number];

interface Fitting {
  readonly heard: Heard;
  readonly state: StarState;
  /** Where the last throws must be, once that is all that was left. */
  readonly last: readonly LastThrow[] | undefined;
}

/** What the rows of lugs make likely, of the guesses that what was heard has left. */
function likely(alive: readonly Guess[]): LikelyTable[] {
  const sum = alive.reduce((total, { share }) => total + share, 0);
  return alive.map(({ contacts, share }) => ({ contacts, probability: (SITTING_SHARE * share) / sum }));
}

/** log2 of n!. */
function factorialBits(count: number): number {
  let bits = 0;
  for (let factor = 2; factor <= count; factor++) bits += Math.log2(factor);
  return bits;
}

/** Bits of all tables that the beeps leave, silences not counted: at most so many. */
function bitsLeft({ loose, unheard, stars }: StarState): number {
  const unsure = stars.filter(({ ends }) => ends.length > 1).length;
  return factorialBits(loose.length) - factorialBits(unheard) + unsure;
}

/** A contact table of stars with the last throws where they must be. */
function contactsOf({ stars }: StarState, last: readonly LastThrow[], lugs: number): Contacts {
  const contacts = new Int32Array(lugs * lugs);
  const join = (a: number, b: number, mask: number) => {
    contacts[a * lugs + b] = mask;
    contacts[b * lugs + a] = mask;
  };
  for (const star of stars) for (const { a, b, position } of star.contacts) join(a, b, 1 << position);
  for (const { star, lug, common } of last) join(common, lug, star.open);
  return contacts;
}

/** The known switches of many lugs: plain poles all of them, too many to list, told apart by what must be so. */
export class StarSearch {
  readonly #lugs: number;
  readonly #positions: number;
  readonly #family: StarFamily;
  readonly #guesses: readonly Guess[];

  constructor(lugs: number, positions: number, family: StarFamily, guesses: readonly BodyGuess[]) {
    this.#lugs = lugs;
    this.#positions = positions;
    this.#family = family;
    this.#guesses = differentTables(guesses);
  }

  judge(touches: readonly ToldTouch[]): Verdict {
    const told = this.#fitting(touches);
    if (told) return this.#judged(touches, told, []);
    const doubtful = this.#suspects(touches).filter((touch) => this.#fitting(touches.filter((each) => each !== touch)));
    const again = doubtful.at(-1);
    if (!again) return FITS_NONE;
    const verdict = this.#judged(touches, this.#fitting(touches.filter((each) => each !== again))!, doubtful);
    return { ...verdict, done: false, next: { a: again.a, b: again.b, outcomes: [], again: true } };
  }

  /** Touches that may have been misheard: contacts, and where those go together, silences about lugs that found no pole. */
  #suspects(touches: readonly ToldTouch[]): ToldTouch[] {
    const state = starState(new Heard(this.#lugs, this.#positions, touches), this.#family);
    const loose = new Set(state?.loose);
    const contacts = new Set(
      touches.flatMap(({ a, b, on }) => (on === 0 ? [] : [Math.min(a, b) * this.#lugs + Math.max(a, b)])),
    );
    // One misheard touch makes one contact too many, and no more than one.
    if (contacts.size > this.#family.poles * this.#family.throws + 1) return [];
    // Lugs that were touched more often are taken as most of those touches tell.
    const once = touches.filter((touch) => toldOnce(touches, touch));
    return once.filter(({ a, b, on }) => on !== 0 || loose.has(a) || loose.has(b));
  }

  /** What the touches make of the family; undefined where no switch of it beeps so. */
  #fitting(touches: readonly ToldTouch[]): Fitting | undefined {
    const heard = new Heard(this.#lugs, this.#positions, touches);
    const state = starState(heard, this.#family);
    const ways = state && starCount(heard, state);
    return state && ways?.count !== 0 ? { heard, state, last: ways?.only } : undefined;
  }

  #judged(touches: readonly ToldTouch[], { heard, state, last }: Fitting, doubtful: readonly ToldTouch[]): Verdict {
    const alive = this.#guesses.filter(({ contacts }) => heard.agrees(contacts));
    const only = last && contactsOf(state, last, this.#lugs);
    const next = only ? undefined : this.#next(new StarOdds(heard, state).pairs(), alive, touches.at(-1));
    if (!only && !next) return FITS_NONE;
    return {
      misheard: doubtful.length === 0 ? 0 : 1,
      contradictions: doubtful.map(({ index }) => index),
      tables: only ? [{ contacts: only, probability: 1 }] : likely(alive),
      bits: only ? 0 : bitsLeft(state),
      count: only ? 1 : undefined,
      done: only !== undefined,
      next,
    };
  }

  #next(pairs: readonly PairOdds[], alive: readonly Guess[], last: ToldTouch | undefined): NextTouch | undefined {
    const best = mostTelling(
      pairs.map((pair) => {
        const shares = this.#sharesOf(pair, alive);
        return { ...pair, shares, gain: entropyOf([...shares.values()]) };
      }),
      last,
    );
    return best && { a: best.a, b: best.b, outcomes: outcomesOf(best.shares), again: false };
  }

  /** What may be heard at two lugs: by the odds, and as far as the lugs sit as in a known body, by that. */
  #sharesOf({ a, b, chance, open }: PairOdds, alive: readonly Guess[]): Map<number, number> {
    const share = alive.length === 0 ? 0 : SITTING_SHARE;
    const positions = bitsOf(open);
    const shares = new Map([[0, (1 - share) * (1 - chance)]]);
    for (const bit of positions) shares.set(1 << bit, ((1 - share) * chance) / positions.length);
    for (const { contacts, probability } of likely(alive)) {
      const mask = contacts[a * this.#lugs + b]!;
      shares.set(mask, (shares.get(mask) ?? 0) + probability);
    }
    return shares;
  }
}
