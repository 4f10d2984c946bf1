import type { Dimension } from "./units.ts";

const UNITS: Readonly<Record<Dimension, string>> = {
  resistance: "Ω",
  capacitance: "F",
  inductance: "H",
  length: "m",
  capacitancePerLength: "F/m",
  resistancePerLength: "Ω/m",
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

function prefixed(value: number, figures: number): [number: number, prefix: string] {
  if (value === 0) return [0, ""];
  const rounded = Number(value.toPrecision(figures));
  const [scale, prefix] = PREFIXES.find(([least]) => Math.abs(rounded) >= least) ?? [1e-12, "p"];
  return [Number((rounded / scale).toPrecision(figures)), prefix];
}

/**
 * "22 nF", "250 kΩ", "41 mm": a quantity in SI units with the prefix that leaves 1 to 999.
 * @param figures how many count
 */
export function showQuantity(value: number, dimension: Dimension, figures = 4): string {
  const [number, prefix] = prefixed(value, figures);
  return `${number} ${prefix}${UNITS[dimension]}`;
}

/** "250k", "1M": as the trade writes a value whose unit goes without saying. */
export function shortQuantity(value: number): string {
  return prefixed(value, 4).join("");
}
