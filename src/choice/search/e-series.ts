/** Preferred values of a decade (IEC 60063). */
export const E_SERIES = {
  E6: [10, 15, 22, 33, 47, 68],
  E12: [10, 12, 15, 18, 22, 27, 33, 39, 47, 56, 68, 82],
  E24: [10, 11, 12, 13, 15, 16, 18, 20, 22, 24, 27, 30, 33, 36, 39, 43, 47, 51, 56, 62, 68, 75, 82, 91],
} as const;

export type SeriesName = keyof typeof E_SERIES;
export const SERIES_NAMES = ["E6", "E12", "E24"] as const satisfies SeriesName[];

/** Rounding allowance at the ends, so that 22 nF written as 2.2e-8 counts as the 22 of its decade. */
const SLACK = 1e-9;

/** Every value of a series from `from` to `to`, both included, rising. */
export function preferredValues(series: SeriesName, from: number, to: number): number[] {
  const values: number[] = [];
  const first = Math.floor(Math.log10(from)) - 1;
  const last = Math.ceil(Math.log10(to));
  for (let decade = first; decade <= last; decade++) {
    for (const digits of E_SERIES[series]) {
      const value = Number(`${digits}e${decade - 1}`);
      if (value >= from * (1 - SLACK) && value <= to * (1 + SLACK)) values.push(value);
    }
  }
  return values;
}
