import type { Build } from "../schema.ts";
import { LugWords } from "../words/lug-words.ts";
import type { LugNumber, LugSpace } from "./lug-space.ts";
import type { Fate, Move } from "./moves.ts";
import { placeOf } from "./order-moves.ts";
import { otherwiseCalled, type SaidLug, saidLug } from "./said-lug.ts";
import { stepText } from "./step-text.ts";
import { otherEnd } from "./strands.ts";

/** One joint to open or to make. */
export interface Step {
  readonly do: "open" | "make";
  /**
   * The lug to heat. What is opened on the way there, and made on the way home, is called as the guard as found calls it; the
   * rest as the guard as wanted does.
   */
  readonly at: string;
  /** The wire's lugs: as it was where it is opened, as it will be where it is made. */
  readonly from: string;
  readonly to: string;
  /** What the wire is: `wire`, `lead`, `bent lug`, … */
  readonly means: string;
  /** Index of the wire in the guard as found; null where it comes new or hung free. */
  readonly wire: number | null;
  readonly fate: Fate;
  /** Index of the step that belongs to it: where a moved end goes or comes from, or a whole wire's other end. */
  readonly partner: number | null;
  /** The step in a sentence. */
  readonly text: string;
}

/** Calls lugs by the names of the guard that the moves are told of. */
export class StepWriter {
  readonly #found: LugWords;
  readonly #wanted: LugWords;
  readonly #space: LugSpace;

  constructor(from: Build, to: Build, space: LugSpace) {
    this.#found = new LugWords(from);
    this.#wanted = new LugWords(to);
    this.#space = space;
  }

  /** The moves as steps there. */
  there(moves: readonly Move[]): Step[] {
    return this.#steps(moves, (move) => move.do === "open");
  }

  /** The moves undone one by one, the last first. */
  home(moves: readonly Move[]): Step[] {
    const undone = moves.map((move): Move => ({ ...move, do: move.do === "open" ? "make" : "open" })).reverse();
    return this.#steps(undone, (move) => move.do === "make");
  }

  #steps(moves: readonly Move[], isAsFound: (move: Move) => boolean): Step[] {
    const byKey = new Map<string, number[]>();
    for (const [index, { key }] of moves.entries()) byKey.set(key, [...(byKey.get(key) ?? []), index]);
    const said = (move: Move, lug: LugNumber) => this.#said(lug, isAsFound(move), move.do === "make");
    return moves.map((move, index) => {
      const { strand, end, fate } = move;
      const asFound = isAsFound(move);
      const partner = byKey.get(move.key)!.find((other) => other !== index) ?? null;
      const moved = partner === null || fate !== "moves" ? undefined : moves[partner]!;
      const name = (lug: LugNumber) => (asFound ? this.#space.foundName(lug) : this.#space.wantedName(lug));
      return {
        do: move.do,
        at: name(placeOf(move)),
        from: name(strand.lugs[0]),
        to: name(strand.lugs[1]),
        means: strand.means,
        wire: strand.wire,
        fate,
        partner,
        text: stepText({
          do: move.do,
          fate,
          means: strand.means,
          at: said(move, placeOf(move)),
          other: said(move, strand.lugs[otherEnd(end)]),
          isNew: strand.wire === null,
          grown: strand.grown[otherEnd(end)],
          moved: moved && said(moved, placeOf(moved)),
        }),
      };
    });
  }

  /**
   * A part that another of its name replaces is the old one, and the other the new one.
   * @param isAhead whether the guard that calls it so is yet to come about
   */
  #said(lug: LugNumber, asFound: boolean, isAhead: boolean): SaidLug {
    const [words, others] = asFound ? [this.#found, this.#wanted] : [this.#wanted, this.#found];
    const said = saidLug(words, asFound ? this.#space.foundName(lug) : this.#space.wantedName(lug));
    if (this.#space.goesOut(lug) || this.#space.comesIn(lug)) {
      const age = asFound ? "old" : "new";
      return [...others.parts.values()].includes(said.part) ? { ...said, part: `${age} ${said.part}` } : said;
    }
    const other = saidLug(others, asFound ? this.#space.wantedName(lug) : this.#space.foundName(lug));
    const called = isAhead ? otherwiseCalled(said, other) : undefined;
    return called === undefined ? said : { ...said, otherwise: `${asFound ? "as wanted" : "as found"}: ${called}` };
  }
}
