import type { Contribution, Evidence, Subject } from "./evidence.ts";
import type { ExciterEvidence } from "./exciter-evidence.ts";

/**
 * ln by which an exciter drives one coil more than another: coils have some thousand turns more or less, and it lies some millimetres
 * nearer to one (common practice, no source).
 */
const LEVEL_DEVIATION = Math.log(2);

/** A drive that is so many times its error is told. */
const TOLD = 3;

/**
 * How strongly an exciter drives each coil that it was laid over: it is one and the same, so a guard in which a coil is hardly driven
 * at all, to account for takes in which it is not heard, is not the likeliest.
 */
export class DriveLevels implements Evidence {
  readonly placements: readonly ExciterEvidence[];

  constructor(placements: readonly ExciterEvidence[]) {
    this.placements = placements;
  }

  keyOf(subject: Omit<Subject, "point">): string {
    return this.placements.map((each) => each.keyOf(subject)).join("|");
  }

  apart(one: Subject, other: Subject): number {
    const [a, b] = [this.#levels(one), this.#levels(other)];
    return a.reduce((sum, each, k) => sum + ((each - b[k]!) / LEVEL_DEVIATION) ** 2, 0);
  }

  /** About a middle that is anywhere. */
  weigh(subject: Subject): Contribution {
    const levels = this.#levels(subject);
    const middle = levels.reduce((sum, each) => sum + each, 0) / levels.length;
    const squares = levels.reduce((sum, each) => sum + ((each - middle) / LEVEL_DEVIATION) ** 2, 0);
    const none = new Float64Array(0);
    return { squares, extra: 0, unknowns: [], right: none, curvature: none, degrees: levels.length - 1 };
  }

  /** ln of each drive. One that is not told is no stronger than so, but may be as strong as the others. */
  #levels(subject: Subject): number[] {
    const drives = this.placements.map((each) => each.driveOf(subject));
    const told = drives.filter(({ overError }) => overError > TOLD).map(({ middle }) => Math.log(middle));
    const usual = told.reduce((sum, each) => sum + each, 0) / told.length;
    return drives.map(({ middle, overError }) => {
      if (told.length === 0) return 0;
      return overError > TOLD ? Math.log(middle) : Math.min(Math.log(middle || 1), usual);
    });
  }
}
