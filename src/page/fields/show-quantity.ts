import type { Dimension } from "../../build-file/quantity.ts";

const UNITS: Readonly<Record<Dimension, string>> = {
  resistance: "Ω",
  capacitance: "F",
  inductance: "H",
  length: "m",
  capacitancePerLength: "F/m",
  frequency: "Hz",
};

const PREFIXES = [
  [1e9, "G"],
  [1e6, "M"],
  [1e3, "k"],
  [1, ""],
  [1e-3, "m"],
  [1e-6, "µ"],
  [1e-9, "n"],
  [1e-12, "p"],
] as const;

const SIGNIFICANT = 4;

/** "22 nF", "250 kΩ", "41 mm": a quantity in SI units with the prefix that leaves 1 to 999. */
export function showQuantity(value: number, dimension: Dimension): string {
  if (value === 0) return `0 ${UNITS[dimension]}`;
  // A value a hair under a prefix is that prefix: 22 n is 22.000000000000004e-9 in binary.
  const size = Math.abs(value) * (1 + 1e-9);
  const [scale, prefix] = PREFIXES.find(([least]) => size >= least) ?? [1e-12, "p"];
  return `${Number((value / scale).toPrecision(SIGNIFICANT))} ${prefix}${UNITS[dimension]}`;
}
