import { type Attempt, exponentials } from "./fit-attempt.ts";
import { t95 } from "./student-t.ts";

export interface FittedValue {
  readonly name: string;
  readonly value: number;
  /** Relative: of the value's logarithm. */
  readonly relativeError: number;
  /** In the value's own unit. */
  readonly standardError: number;
  /** 95 % confidence. */
  readonly low: number;
  readonly high: number;
}

/** A precision found from the residuals makes the errors Student's, a known one normal. */
export function interval(name: string, value: number, relativeError: number, freedom: number): FittedValue {
  const reach = Math.exp(t95(freedom) * relativeError);
  return { name, value, relativeError, standardError: value * relativeError, low: value / reach, high: value * reach };
}

/** The sum of all inductances and its error, from the covariance of the logarithms. */
export function lowFrequencyInductance({ shape, solution }: Attempt, freedom: number): FittedValue {
  const size = shape.names.length;
  const values = exponentials(solution.parameters);
  const members = shape.names.flatMap((name, i) => (name.endsWith("inductance") ? [i] : []));
  const total = members.reduce((sum, i) => sum + values[i]!, 0);
  let variance = 0;
  for (const i of members)
    for (const j of members) variance += (values[i]! * values[j]! * solution.covariance![i * size + j]!) / total ** 2;
  return interval("lowFrequencyInductance", total, Math.sqrt(variance), freedom);
}

/** Parameter numbers with the loss sections in the order of their corners R/L, lowest first, as every answer lists them. */
export function inOrder(values: Float64Array): number[] {
  const core = [0, 1, 2];
  const sections = Array.from({ length: Math.floor((values.length - core.length) / 2) }, (_, i) => core.length + 2 * i);
  if (sections.length < 2) return [...values.keys()];
  const corner = (at: number) => values[at]! / values[at + 1]!;
  return [...core, ...sections.toSorted((a, b) => corner(a) - corner(b)).flatMap((at) => [at, at + 1])];
}
