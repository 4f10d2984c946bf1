/**
 * Points on a half circle about the origin of the p plane, from which a real polynomial of known degree is recovered: the
 * other half follows by conjugation. None lies on the real axis.
 */
export interface SampleCircle {
  /** Points of the upper half; the full circle has twice as many. */
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** basis[k · half + m]: what sample m contributes to coefficient k, real and imaginary part. */
  readonly basisRe: Float64Array;
  readonly basisIm: Float64Array;
  readonly coefficientCount: number;
}

const circles = new Map<number, SampleCircle>();

/** The circle for polynomials of at most `degree`. Circles are constants, made once. */
export function sampleCircle(degree: number): SampleCircle {
  const half = Math.floor(degree / 2) + 1;
  const known = circles.get(half);
  if (known) return known;
  const count = 2 * half;
  const angles = Float64Array.from({ length: half }, (_, m) => (Math.PI * (2 * m + 1)) / count);
  const basisRe = new Float64Array(count * half);
  const basisIm = new Float64Array(count * half);
  for (let k = 0; k < count; k++) {
    for (let m = 0; m < half; m++) {
      basisRe[k * half + m] = (2 / count) * Math.cos(k * angles[m]!);
      basisIm[k * half + m] = (2 / count) * Math.sin(k * angles[m]!);
    }
  }
  const circle = { re: angles.map(Math.cos), im: angles.map(Math.sin), basisRe, basisIm, coefficientCount: count };
  circles.set(half, circle);
  return circle;
}

/** A polynomial recovered from samples. */
export interface FittedPolynomial {
  /** In rising powers. */
  readonly coefficients: Float64Array;
  /** About what rounding adds to each of them. */
  readonly rounding: Float64Array;
}

/**
 * The real polynomial with these values on the upper halves of circles of several radii, one circle after the other. Each
 * coefficient comes from the circle on which it stands out the most from the rounding of the largest value there (Cauchy's bound).
 */
export function fittedPolynomial(
  circle: SampleCircle,
  radii: readonly number[],
  valuesRe: Float64Array,
  valuesIm: Float64Array,
): FittedPolynomial {
  const { coefficientCount } = circle;
  const coefficients = new Float64Array(coefficientCount);
  const rounding = new Float64Array(coefficientCount).fill(Number.POSITIVE_INFINITY);
  for (let c = 0; c < radii.length; c++) {
    const first = c * circle.re.length;
    let lost = Number.EPSILON * largestAt(valuesRe, valuesIm, first, first + circle.re.length);
    let scale = 1;
    for (let k = 0; k < coefficientCount; k++) {
      if (lost < rounding[k]!) {
        coefficients[k] = scale * coefficientAt(circle, k, valuesRe, valuesIm, first);
        rounding[k] = lost;
      }
      lost /= radii[c]!;
      scale /= radii[c]!;
    }
  }
  return { coefficients, rounding };
}

function largestAt(valuesRe: Float64Array, valuesIm: Float64Array, from: number, to: number): number {
  let largest = 0;
  for (let m = from; m < to; m++) largest = Math.max(largest, Math.abs(valuesRe[m]!) + Math.abs(valuesIm[m]!));
  return largest;
}

function coefficientAt(
  { basisRe, basisIm, re: { length: half } }: SampleCircle,
  k: number,
  valuesRe: Float64Array,
  valuesIm: Float64Array,
  first: number,
): number {
  let sum = 0;
  for (let m = 0; m < half; m++)
    sum += valuesRe[first + m]! * basisRe[k * half + m]! + valuesIm[first + m]! * basisIm[k * half + m]!;
  return sum;
}
