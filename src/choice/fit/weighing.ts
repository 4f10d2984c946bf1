import { independentShare, type Stretch } from "./independent-share.ts";

/** How far off the errors of one stretch are as a rule, and how many of them count. */
export interface Weighed {
  readonly stretch: Stretch;
  /** Standard deviation of one error, of those that are expected to be of usual size. */
  readonly sigma: number;
  /** Mean square, without regard to how many values were fitted to them. */
  readonly meanSquare: number;
  /** Of the errors, how many count as independent. */
  readonly share: number;
}

/** Precision that no instrument has; keeps perfect data from a division by zero. */
const LEAST_PRECISION = 1e-9;

/**
 * Sizes and angles of a sweep need not be off by as much: each stretch of errors tells its own.
 * @param errors each divided by how large it is expected to be beside the others
 * @param runs of errors that follow one another in frequency
 * @param degreesOfFreedom of all errors together
 */
export function weighed(
  errors: Float64Array,
  stretches: readonly Stretch[],
  runs: readonly Stretch[],
  degreesOfFreedom: number,
): Weighed[] {
  return stretches.map((stretch): Weighed => {
    const own = errors.subarray(...stretch);
    const square = own.reduce((sum, error) => sum + error * error, 0);
    const free = (own.length * degreesOfFreedom) / errors.length;
    const within = runs.filter(([from, to]) => from >= stretch[0] && to <= stretch[1]);
    return {
      stretch,
      sigma: Math.max(LEAST_PRECISION, Math.sqrt(square / free)),
      meanSquare: Math.max(LEAST_PRECISION ** 2, square / own.length),
      share: within.length > 0 ? independentShare(errors, within) : 1,
    };
  });
}

/** All stretches together, as one. */
export function pooled(parts: readonly Weighed[]): Pick<Weighed, "sigma" | "share"> {
  const length = ({ stretch: [from, to] }: Weighed) => to - from;
  const count = parts.reduce((sum, part) => sum + length(part), 0);
  const mean = (of: (part: Weighed) => number) => parts.reduce((sum, part) => sum + length(part) * of(part), 0) / count;
  return { sigma: Math.sqrt(mean(({ sigma }) => sigma ** 2)), share: mean(({ share }) => share) };
}
