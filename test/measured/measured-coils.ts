import { readFileSync } from "node:fs";
import type { BridgedSection } from "../../src/response/coil-ladder.ts";

/** A real coil: what was fitted to all of its ratios, and how well that follows them. */
export interface MeasuredCoil {
  /** First digits of the git blob of its unloaded sweep. */
  readonly name: string;
  /** From memory. */
  readonly kind: string;
  readonly resistance: number;
  /** What no section bridges. */
  readonly inductance: number;
  readonly section: BridgedSection | undefined;
  readonly capacitance: number;
  /** Across coil and instrument together. */
  readonly siemens: number;
  /** Of all frequencies to 12 kHz under R, to 5 kHz under C, the level free. */
  readonly rmsDb: Readonly<Record<LoadName, number>>;
}

export const LOADS = {
  R: { resistance: 200e3, capacitance: 470e-12 },
  C: { resistance: Number.POSITIVE_INFINITY, capacitance: 10.08e-9 },
} as const;
export type LoadName = keyof typeof LOADS;

/** Open data set strayr/pickupAnalyseR-data (CC0-1.0, commit 7760780), by least squares on the logarithms of its ratios. */
export const MEASURED_COILS: readonly MeasuredCoil[] = [
  {
    name: "ab2e180",
    kind: "single coil on alnico rods",
    resistance: 6598,
    inductance: 2.6069,
    section: undefined,
    capacitance: 385.7e-12,
    siemens: 1.592e-6,
    rmsDb: { R: 0.166, C: 0.122 },
  },
  {
    name: "cd93307",
    kind: "single coil on steel cores",
    resistance: 5501,
    inductance: 3.1245,
    section: { resistance: 9139, inductance: 0.9578 },
    capacitance: 154.6e-12,
    siemens: 1.834e-6,
    rmsDb: { R: 0.282, C: 0.174 },
  },
  {
    name: "01f8d06",
    kind: "wide single coil on bar magnets",
    resistance: 11311,
    inductance: 4.6065,
    section: { resistance: 26932, inductance: 2.309 },
    capacitance: 132.5e-12,
    siemens: 0.874e-6,
    rmsDb: { R: 0.209, C: 0.094 },
  },
  {
    name: "e8d3d18",
    kind: "humbucker, vintage wind",
    resistance: 8138,
    inductance: 3.2639,
    section: { resistance: 11273, inductance: 0.8234 },
    capacitance: 147.5e-12,
    siemens: 1.876e-6,
    rmsDb: { R: 0.235, C: 0.109 },
  },
  {
    name: "f7e304d",
    kind: "one coil of a humbucker",
    resistance: 4570,
    inductance: 1.7995,
    section: { resistance: 4188.2, inductance: 0.3278 },
    capacitance: 133.8e-12,
    siemens: 2.991e-6,
    rmsDb: { R: 0.248, C: 0.137 },
  },
  {
    name: "3633e3a",
    kind: "humbucker, bridge",
    resistance: 10276,
    inductance: 3.3226,
    section: { resistance: 28455, inductance: 1.468 },
    capacitance: 142.5e-12,
    siemens: 0.567e-6,
    rmsDb: { R: 0.107, C: 0.093 },
  },
  {
    name: "8eb619b",
    kind: "humbucker, hot, bridge",
    resistance: 14691,
    inductance: 4.9375,
    section: { resistance: 19974, inductance: 1.705 },
    capacitance: 122.2e-12,
    siemens: 1.017e-6,
    rmsDb: { R: 0.148, C: 0.111 },
  },
  {
    name: "592a336",
    kind: "its one coil, the other open",
    resistance: 6119,
    inductance: 2.3908,
    section: { resistance: 6079.2, inductance: 0.6517 },
    capacitance: 141.3e-12,
    siemens: 1.641e-6,
    rmsDb: { R: 0.247, C: 0.106 },
  },
  {
    name: "bc846ff",
    kind: "inner coils of two humbuckers, parallel",
    resistance: 2833,
    inductance: 1.1336,
    section: { resistance: 4220.1, inductance: 0.3867 },
    capacitance: 273.6e-12,
    siemens: 2.951e-6,
    rmsDb: { R: 0.133, C: 0.113 },
  },
  {
    name: "1a5c3e6",
    kind: "humbucker under a cover",
    resistance: 18559,
    inductance: 7.4989,
    section: { resistance: 22713, inductance: 2.49 },
    capacitance: 156.1e-12,
    siemens: 1.473e-6,
    rmsDb: { R: 0.108, C: 0.066 },
  },
  {
    name: "b0bf760",
    kind: "humbucker, hot, neck",
    resistance: 13465,
    inductance: 7.2275,
    section: { resistance: 2158.6, inductance: 0.7807 },
    capacitance: 188.4e-12,
    siemens: 2.136e-6,
    rmsDb: { R: 0.317, C: 0.207 },
  },
  {
    name: "0a8c224",
    kind: "humbucker, hot, older",
    resistance: 15654,
    inductance: 6.1154,
    section: { resistance: 12277, inductance: 1.31 },
    capacitance: 108.4e-12,
    siemens: 1.176e-6,
    rmsDb: { R: 0.234, C: 0.136 },
  },
  {
    name: "abed846",
    kind: "humbucker, hot, ceramic",
    resistance: 17117,
    inductance: 7.0573,
    section: { resistance: 7984.6, inductance: 1.056 },
    capacitance: 100.2e-12,
    siemens: 1.246e-6,
    rmsDb: { R: 0.329, C: 0.084 },
  },
  {
    name: "e23cd6d",
    kind: "bass single coil",
    resistance: 7071,
    inductance: 1.8471,
    section: undefined,
    capacitance: 294.4e-12,
    siemens: 5.096e-6,
    rmsDb: { R: 0.151, C: 0.119 },
  },
  {
    name: "d87457d",
    kind: "small bass pickup in a closed can",
    resistance: 5423,
    inductance: 0.9588,
    section: { resistance: 10692, inductance: 0.8671 },
    capacitance: 38.9e-12,
    siemens: 5.364e-6,
    rmsDb: { R: 0.072, C: 0.112 },
  },
];

const ROWS = readFileSync(new URL("pickup-ratios.csv", import.meta.url), "utf8")
  .split("\n")
  .filter((line) => line !== "" && !line.startsWith("#"))
  .slice(1)
  .map((line) => line.split(","));

/** Its voltage unloaded over loaded, at the frequencies kept here. */
export function ratiosOf(coil: string, load: LoadName) {
  const rows = ROWS.filter((row) => row[0] === coil && row[1] === load).map((row) => row.slice(2).map(Number));
  const column = (index: number) => rows.map((row) => row[index]!);
  return { frequenciesHz: column(0), levelsDb: column(1), degrees: column(2) };
}
