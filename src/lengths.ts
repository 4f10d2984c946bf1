export const METRES_PER_FOOT = 0.3048;
export const METRES_PER_INCH = 0.0254;

/** 25.5 inch, rounded to the millimetre; common practice, no source. */
export const DEFAULT_SCALE_METRES = 0.648;

/** A length as it is read off a rule: "12.4 mm". */
export function millimetresText(metres: number): string {
  return `${Number((metres * 1000).toFixed(Math.abs(metres) < 0.01 ? 2 : 1))} mm`;
}
