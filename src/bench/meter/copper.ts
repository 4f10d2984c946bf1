/**
 * Temperature coefficient of resistance of standard annealed copper at 20 °C, a kelvin: 0.00393 (IEC 60028). Wire as fine as
 * a coil's has 0.98 of standard conductivity and with it about 0.00385; between 5 and 35 °C the two differ by 0.12 %.
 */
export const COPPER_ALPHA_20 = 0.00393;
export const REFERENCE_CELSIUS = 20;

/** The factor by which copper's resistance at a temperature exceeds that at 20 °C: 1 + α20 · (T − 20). */
export function copperFactor(celsius: number): number {
  return 1 + COPPER_ALPHA_20 * (celsius - REFERENCE_CELSIUS);
}
