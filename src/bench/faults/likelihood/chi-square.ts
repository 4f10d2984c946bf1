const MAX_TERMS = 1000;
const PRECISION = 1e-14;

/** ln Γ(n / 2) for a whole n ≥ 1, by Γ(x + 1) = x Γ(x) from Γ(1/2) = √π and Γ(1) = 1. */
function logGammaOfHalf(n: number): number {
  let log = n % 2 === 0 ? 0 : Math.log(Math.PI) / 2;
  for (let x = n % 2 === 0 ? 1 : 0.5; x < n / 2; x++) log += Math.log(x);
  return log;
}

/**
 * Probability, 0 to 1, that a chi-square variable of so many degrees of freedom is at least this large: the regularised upper
 * incomplete gamma function Q(ν/2, χ²/2) (Abramowitz & Stegun 26.4.19), by its series (6.5.29) or continued fraction (6.5.31).
 * @param degrees whole; with 0 nothing was tested, and the answer is 1
 */
export function chiSquareTail(chiSquare: number, degrees: number): number {
  if (degrees === 0 || chiSquare <= 0) return 1;
  const [a, x] = [degrees / 2, chiSquare / 2];
  const front = Math.exp(a * Math.log(x) - x - logGammaOfHalf(degrees));
  return x < a + 1 ? 1 - front * seriesOf(a, x) : front * fractionOf(a, x);
}

function seriesOf(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < MAX_TERMS && term > PRECISION * sum; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

/** Lentz's method; every denominator is positive for x > a − 1. */
function fractionOf(a: number, x: number): number {
  let b = x + 1 - a;
  let c = Number.POSITIVE_INFINITY;
  let d = 1 / b;
  let value = d;
  for (let n = 1; n < MAX_TERMS; n++) {
    const numerator = -n * (n - a);
    b += 2;
    d = 1 / (numerator * d + b);
    c = b + numerator / c;
    const step = c * d;
    value *= step;
    if (Math.abs(step - 1) < PRECISION) break;
  }
  return value;
}
