import { independentShare, type Stretch } from "./independent-share.ts";

/** How far off the errors of one stretch are. */
export interface Weighed {
  readonly stretch: Stretch;
  /** Standard deviation of each. */
  readonly sigma: Float64Array;
  /** −2 ln likelihood, up to what is the same for every model. */
  readonly unlikeliness: number;
  /** Of the errors, how many count as independent. */
  readonly share: number;
}

/** How large errors are expected to be: beside each other, or each by itself as the one who measured says. */
export type Expected =
  | { readonly beside: Float64Array; readonly stated?: undefined }
  | { readonly stated: Float64Array; readonly beside?: undefined };

/** Precision that no instrument has; keeps perfect data from a division by zero. */
const LEAST_PRECISION = 1e-9;
const HALVINGS = 60;

const sumOver = (values: Float64Array, of: (value: number, i: number) => number) => {
  let sum = 0;
  for (const [i, value] of values.entries()) sum += of(value, i);
  return sum;
};

/** All errors by one size. @param free how many are left once the values are fitted */
function evenly(errors: Float64Array, beside: Float64Array, free: number) {
  const square = Math.max(
    LEAST_PRECISION ** 2 * errors.length,
    sumOver(errors, (error, i) => (error / beside[i]!) ** 2),
  );
  const size = Math.sqrt(square / free);
  return {
    sigma: beside.map((each) => each * size),
    unlikeliness: errors.length * Math.log(square / errors.length),
  };
}

/** What is left beside stated errors, in quadrature and of one size, for errors as large as they are (R. C. Paule and J. Mandel, 1982). */
function besideStated(errors: Float64Array, stated: Float64Array, free: number): Float64Array {
  const chiSquare = (misfit: number) => sumOver(errors, (error, i) => error ** 2 / (stated[i]! ** 2 + misfit ** 2));
  let [low, high] = [LEAST_PRECISION, Math.sqrt(sumOver(errors, (error) => error ** 2) / free) + LEAST_PRECISION];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const middle = Math.sqrt(low * high);
    if (chiSquare(middle) > free) low = middle;
    else high = middle;
  }
  return stated.map((each) => Math.hypot(each, low));
}

function byStated(errors: Float64Array, stated: Float64Array, free: number) {
  const likeliest = besideStated(errors, stated, errors.length);
  return {
    sigma: besideStated(errors, stated, free),
    unlikeliness: sumOver(errors, (error, i) => 2 * Math.log(likeliest[i]!) + (error / likeliest[i]!) ** 2),
  };
}

/**
 * Sizes and angles of a sweep need not be off by as much: each stretch of errors tells its own.
 * @param runs of errors that follow one another in frequency
 * @param degreesOfFreedom of all errors together
 */
export function weighed(
  errors: Float64Array,
  expected: Expected,
  stretches: readonly Stretch[],
  runs: readonly Stretch[],
  degreesOfFreedom: number,
): Weighed[] {
  return stretches.map((stretch): Weighed => {
    const [from, to] = stretch;
    const own = errors.subarray(from, to);
    const free = (own.length * degreesOfFreedom) / errors.length;
    const found = expected.stated
      ? byStated(own, expected.stated.subarray(from, to), free)
      : evenly(own, expected.beside.subarray(from, to), free);
    const within = runs
      .filter((run) => run[0] >= from && run[1] <= to)
      .map((run): Stretch => [run[0] - from, run[1] - from]);
    const share =
      within.length > 0
        ? independentShare(
            own.map((error, i) => error / found.sigma[i]!),
            within,
          )
        : 1;
    return { stretch, share, ...found };
  });
}

/** One size for all: of the errors in the middle. */
export function usualSigma(parts: readonly Weighed[]): number {
  const all = Float64Array.from(parts.flatMap(({ sigma }) => [...sigma])).sort();
  return all[Math.floor(all.length / 2)]!;
}

/** Of all errors, how many count as independent. */
export function shareOf(parts: readonly Weighed[]): number {
  const count = parts.reduce((sum, { sigma }) => sum + sigma.length, 0);
  return parts.reduce((sum, { sigma, share }) => sum + share * sigma.length, 0) / count;
}
