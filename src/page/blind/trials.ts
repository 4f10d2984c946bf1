export type Side = "A" | "B";

/** Which of the two X is, from the browser's source of true randomness: a guessable order would be an answer. */
function drawSide(): Side {
  return crypto.getRandomValues(new Uint8Array(1))[0]! & 1 ? "A" : "B";
}

/** A blind test under way: trials answered so far and the hidden side of the present one. */
export class Trials {
  readonly count: number;
  #hidden: Side = drawSide();
  #answered = 0;
  #right = 0;

  constructor(count: number) {
    this.count = count;
  }

  get hidden(): Side {
    return this.#hidden;
  }

  get answered(): number {
    return this.#answered;
  }

  get right(): number {
    return this.#right;
  }

  get isOver(): boolean {
    return this.#answered >= this.count;
  }

  answer(side: Side): void {
    if (this.isOver) return;
    if (side === this.#hidden) this.#right += 1;
    this.#answered += 1;
    this.#hidden = drawSide();
  }
}
