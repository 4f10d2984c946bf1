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

/** Coefficients in rising powers of the polynomial with these values on the circle's upper half. */
export function coefficientsFrom(circle: SampleCircle, valuesRe: Float64Array, valuesIm: Float64Array): Float64Array {
  const { basisRe, basisIm, coefficientCount } = circle;
  const half = circle.re.length;
  const coefficients = new Float64Array(coefficientCount);
  for (let k = 0; k < coefficientCount; k++) {
    let sum = 0;
    for (let m = 0; m < half; m++) sum += valuesRe[m]! * basisRe[k * half + m]! + valuesIm[m]! * basisIm[k * half + m]!;
    coefficients[k] = sum;
  }
  return coefficients;
}
