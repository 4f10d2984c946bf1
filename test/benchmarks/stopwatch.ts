/** The median of the times (ms) of `runs` calls, after `warmups` that are not counted. */
export function medianMilliseconds(act: () => unknown, runs: number, warmups = 3): number {
  let kept: unknown;
  for (let i = 0; i < warmups; i++) kept = act();
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    kept = act();
    return performance.now() - start;
  });
  if (kept === undefined) throw new Error("a bench must return its result, so that it is not optimised away");
  return median(times);
}

export function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]!;
}

export function report(title: string, rows: Readonly<Record<string, number | string>>): void {
  const width = Math.max(...Object.keys(rows).map((key) => key.length));
  const shown = (value: number | string) => (typeof value === "number" ? value.toPrecision(4) : value);
  const lines = Object.entries(rows).map(([key, value]) => `  ${key.padEnd(width)}  ${shown(value)}`);
  console.log([title, ...lines].join("\n"));
}
