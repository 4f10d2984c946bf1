import { PresolderError } from "../../../errors.ts";
import { Candidate } from "../candidate.ts";
import type { WantedQuestion } from "../wanted-question.ts";
import type { Shape } from "./shapes.ts";

/** The shapes that a search has looked at, up to as many as it may, each made a guard once. */
export class KnownShapes {
  readonly #question: WantedQuestion;
  readonly #most: number;
  readonly #known = new Map<string, Candidate | null>();

  constructor(question: WantedQuestion, most: number) {
    this.#question = question;
    this.#most = most;
  }

  get count(): number {
    return this.#known.size;
  }

  get isFull(): boolean {
    return this.count >= this.#most;
  }

  /**
   * A shape as a guard; null where it cannot be built, or no more may be tried.
   * @param seen is given every guard that was not known before
   */
  candidateOf(shape: Shape, seen: (candidate: Candidate) => void): Candidate | null {
    const key = JSON.stringify(shape.plan);
    const known = this.#known.get(key);
    if (known !== undefined || this.isFull) return known ?? null;
    const candidate = this.#made(shape);
    this.#known.set(key, candidate);
    if (candidate) seen(candidate);
    return candidate;
  }

  #made(shape: Shape): Candidate | null {
    try {
      return new Candidate(shape, this.#question);
    } catch (error) {
      // What cannot be wired with these pickups is none of the choices.
      if (error instanceof PresolderError && error.code === "BUILD_INVALID") return null;
      throw error;
    }
  }
}
