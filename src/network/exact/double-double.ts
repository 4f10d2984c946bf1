/**
 * Sums and products with their rounding errors: a value is a pair of doubles, high and low, with some 32 digits together
 * (T. J. Dekker, A floating-point technique for extending the available precision, Numer. Math. 18, 1971; D. E. Knuth, TAOCP 2,
 * 4.2.2). Each function returns one number, so that inner loops allocate nothing.
 */

/** 2^27 + 1 cuts a double's 53 bits into two halves whose products are exact. */
const SPLITTER = 134_217_729;

/** What `sum` = a + b lost. */
export function sumError(a: number, b: number, sum: number): number {
  const part = sum - a;
  return a - (sum - part) + (b - part);
}

/** What `product` = a·b lost. */
export function productError(a: number, b: number, product: number): number {
  const wideA = SPLITTER * a;
  const highA = wideA - (wideA - a);
  const lowA = a - highA;
  const wideB = SPLITTER * b;
  const highB = wideB - (wideB - b);
  const lowB = b - highB;
  return highA * highB - product + highA * lowB + lowA * highB + lowA * lowB;
}

/** What `quotient` = a/b lost. */
export function quotientError(a: number, b: number, quotient: number): number {
  const product = quotient * b;
  return (a - product - productError(quotient, b, product)) / b;
}
