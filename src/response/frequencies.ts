/** `count` frequencies from `from` to `to`, equally spaced on a log scale; the ends are exact. */
export function logSpaced(from: number, to: number, count: number): Float64Array {
  if (count === 1) return Float64Array.of(from);
  const ratio = Math.log(to / from) / (count - 1);
  const frequencies = Float64Array.from({ length: count }, (_, index) => from * Math.exp(ratio * index));
  frequencies[count - 1] = to;
  return frequencies;
}
