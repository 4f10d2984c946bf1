import type { Outcome, StoppingRule } from "./stopping.ts";

/** Evenly from 0 up to below `count`, from the browser's source of true randomness: a guessable order would be an answer. */
function drawIndex(count: number): number {
  const fair = Math.floor(256 / count) * count;
  const byte = new Uint8Array(1);
  do crypto.getRandomValues(byte);
  while (byte[0]! >= fair);
  return byte[0]! % count;
}

/** A blind test under way: which of several sounds is playing, drawn by lot for every trial, the same one twice or not. */
export class NamingTrials {
  readonly candidates: number;
  readonly #rule: StoppingRule;
  readonly #draw: (count: number) => number;
  /** By what was played and what it was taken for. */
  readonly #answers: number[][];
  #hidden: number;

  constructor(candidates: number, rule: StoppingRule, draw = drawIndex) {
    this.candidates = candidates;
    this.#rule = rule;
    this.#draw = draw;
    this.#answers = Array.from({ length: candidates }, () => new Array<number>(candidates).fill(0));
    this.#hidden = draw(candidates);
  }

  /** What plays in this trial. */
  get hidden(): number {
    return this.#hidden;
  }

  get answered(): number {
    return this.#answers.flat().reduce((sum, count) => sum + count, 0);
  }

  get right(): number {
    return this.#answers.reduce((sum, row, index) => sum + row[index]!, 0);
  }

  /** Of each sound how often it was taken for each. */
  get answers(): readonly (readonly number[])[] {
    return this.#answers;
  }

  get outcome(): Outcome | undefined {
    return this.answered === 0 ? undefined : this.#rule.outcome(this.right, this.answered);
  }

  answer(named: number): void {
    if (this.outcome !== undefined) return;
    this.#answers[this.#hidden]![named]! += 1;
    this.#hidden = this.#draw(this.candidates);
  }
}
