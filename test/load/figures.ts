export function quantile(values: readonly number[], fraction: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(fraction * sorted.length))] ?? Number.NaN;
}

/** Slope of the straight line of least squares through the points. */
export function slope(points: readonly (readonly [x: number, y: number])[]): number {
  const mean = (index: 0 | 1) => points.reduce((sum, point) => sum + point[index], 0) / points.length;
  const [x, y] = [mean(0), mean(1)];
  const over = points.reduce((sum, point) => sum + (point[0] - x) * (point[1] - y), 0);
  return over / points.reduce((sum, point) => sum + (point[0] - x) ** 2, 0);
}

/** One value of the Prometheus text. */
export function figure(text: string, name: string): number {
  const line = text.split("\n").find((each) => each.startsWith(`${name} `));
  return Number(line?.slice(name.length + 1));
}
