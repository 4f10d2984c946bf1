/** 5 %, median, 95 %. */
export const LEVELS = [0.05, 0.5, 0.95] as const;

export interface Percentiles {
  readonly low: number;
  readonly middle: number;
  readonly high: number;
}

/** The value below which a fraction of sorted values lies, straight lines between order statistics. */
export function quantile(sorted: ArrayLike<number>, fraction: number): number {
  const place = fraction * (sorted.length - 1);
  const below = Math.floor(place);
  const lower = sorted[below]!;
  return lower + (place - below) * ((sorted[below + 1] ?? lower) - lower);
}

/** 5/50/95 % of values; null for an empty list. */
export function percentiles(values: readonly number[]): Percentiles | null {
  if (values.length === 0) return null;
  const sorted = Float64Array.from(values).sort();
  const [low, middle, high] = LEVELS.map((level) => quantile(sorted, level)) as [number, number, number];
  return { low, middle, high };
}
