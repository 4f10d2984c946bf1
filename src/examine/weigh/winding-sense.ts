import type { Contribution, Evidence, Subject } from "./evidence.ts";
import type { ExciterEvidence } from "./exciter-evidence.ts";

/** How often somebody lays an exciter with a marked side the wrong side up (common practice, no source). */
const SLIP = 0.002;
const [FROM_HZ, TO_HZ] = [90, 900];

/**
 * The sense of one coil's winding against the others': an exciter with the same side up drives them all alike, so a guard in which one
 * needs an opposite drive has it the other way about, or the exciter was turned over.
 */
export class WindingSense implements Evidence {
  readonly placements: readonly ExciterEvidence[];

  constructor(placements: readonly ExciterEvidence[]) {
    this.placements = placements;
  }

  keyOf(subject: Omit<Subject, "point">): string {
    return this.placements.map((each) => each.keyOf(subject)).join("|");
  }

  /** The sign of each placement's drive beside the first one's; 0 where either is silent. */
  signs(subject: Subject): number[] {
    const drives = this.placements.map((each) => each.driveOf(subject));
    const first = drives[0]!;
    const frequenciesHz = this.placements[0]!.laid.takes[0]!.take.frequenciesHz;
    return drives.map(({ re, im }) => {
      const together = re.reduce((sum, x, i) => {
        const isUsed = frequenciesHz[i]! >= FROM_HZ && frequenciesHz[i]! <= TO_HZ;
        return isUsed ? sum + (x * first.re[i]! + im[i]! * first.im[i]!) : sum;
      }, 0);
      return Math.sign(together);
    });
  }

  apart(one: Subject, other: Subject): number {
    return 2 * Math.abs(this.#log(this.signs(one)) - this.#log(this.signs(other)));
  }

  weigh(subject: Subject): Contribution {
    const extra = -2 * this.#log(this.signs(subject));
    const none = new Float64Array(0);
    return { squares: extra, extra, unknowns: [], right: none, curvature: none, degrees: 0 };
  }

  /** All signs alike but for slips, whichever sign that is. */
  #log(signs: readonly number[]): number {
    const likely = (sign: number) =>
      signs.reduce((product, each) => (each === 0 ? product / 2 : product * (each === sign ? 1 - SLIP : SLIP)), 1);
    return Math.log((likely(1) + likely(-1)) / 2);
  }
}
