import { type CoilShape, LOSS_MODELS, type LossModel } from "./coil-shapes.ts";

/** What stands in a coil, as far as it decides how its inductance falls with frequency. */
export const COIL_TYPES = ["rods", "steel-single", "wide-single", "humbucker", "covered"] as const;
export type CoilType = (typeof COIL_TYPES)[number];

/** A value that coils have as a rule: its median, and the standard deviation of its logarithm. */
interface Usual {
  readonly median: number;
  readonly spread: number;
}

/** Two sections where a coil's loss needs two: each one's share of the whole inductance, their corners' geometric mean and quotient. */
interface UsualPair {
  readonly share: Usual;
  readonly cornerHz: Usual;
  readonly apart: Usual;
}

/**
 * What is known of a coil before anything is measured: a guide where measurements leave a value open, and nothing beside measurements
 * that tell it. A section's share is of its own inductance in it and the unbridged one together, its corner R/(2πL).
 */
export interface UsualCoil {
  readonly farads: Usual;
  readonly share: Usual;
  readonly cornerHz: Usual;
  readonly two: UsualPair;
  /** Of what bridges the whole inductance, for each henry of it: both go as the turns squared. */
  readonly acrossOhmsPerHenry: Usual;
  readonly models: readonly LossModel[];
}

/**
 * Medians and spreads of 22 real coils together (open data set strayr/pickupAnalyseR-data, CC0-1.0, reduced); of two sections, those of
 * fifteen by both of their loads.
 */
export const ANY_COIL: UsualCoil = {
  farads: { median: 150e-12, spread: 0.5 },
  share: { median: 0.22, spread: 0.5 },
  cornerHz: { median: 1800, spread: 0.7 },
  two: {
    share: { median: 0.15, spread: 0.55 },
    cornerHz: { median: 2700, spread: 0.45 },
    apart: { median: 2.7, spread: 0.5 },
  },
  acrossOhmsPerHenry: { median: 400e3, spread: 0.9 },
  models: LOSS_MODELS,
};

/** Two sections go with the one that would stand for both. */
function steel(share: number, cornerHz: number): UsualCoil {
  const pair = ANY_COIL.two;
  const as = (of: Usual, factor: number) => ({ ...of, median: of.median * factor });
  return {
    ...ANY_COIL,
    models: ["one-section", "section-and-resistor", "two-sections"],
    share: { median: share, spread: 0.4 },
    cornerHz: { median: cornerHz, spread: 0.5 },
    two: {
      ...pair,
      share: as(pair.share, share / ANY_COIL.share.median),
      cornerHz: as(pair.cornerHz, cornerHz / ANY_COIL.cornerHz.median),
    },
  };
}

/** Of the same set by type; two or three coils of a type tell a median, and their spread is that of all humbuckers. */
const BY_TYPE: Readonly<Record<CoilType, UsualCoil>> = {
  rods: { ...ANY_COIL, models: ["none", "resistor"] },
  "steel-single": steel(0.24, 1550),
  "wide-single": steel(0.33, 1850),
  humbucker: steel(0.2, 1500),
  covered: steel(0.4, 2100),
};

export const usualCoil = (type: CoilType | undefined): UsualCoil => (type ? BY_TYPE[type] : ANY_COIL);

const off = (value: number, { median, spread }: Usual) => Math.log(value / median) / spread;

interface Section {
  readonly henries: number;
  readonly cornerHz: number;
}

const offAsOne = ({ henries, cornerHz }: Section, inductance: number, usual: UsualCoil) => [
  off(henries / (inductance + henries), usual.share),
  off(cornerHz, usual.cornerHz),
];

function offAsTwo(one: Section, other: Section, all: number, { two }: UsualCoil): number[] {
  const [low, high] = [Math.min(one.cornerHz, other.cornerHz), Math.max(one.cornerHz, other.cornerHz)];
  return [
    off(one.henries / all, two.share),
    off(other.henries / all, two.share),
    off(Math.sqrt(low * high), two.cornerHz),
    off(high / low, two.apart),
  ];
}

/** How many standard deviations a coil's values lie from what is usual. */
export function unusualness({ names }: CoilShape, parameters: ArrayLike<number>, usual: UsualCoil): number[] {
  const at = (name: string) => parameters[names.indexOf(name)]!;
  const rows = [off(at("capacitance"), usual.farads)];
  const all = names.reduce((sum, name, i) => (name.endsWith("inductance") ? sum + parameters[i]! : sum), 0);
  const sections: Section[] = [];
  for (const [i, name] of names.entries()) {
    if (name !== "loss" && !/^loss\.\d\.resistance$/.test(name)) continue;
    const ohms = parameters[i]!;
    const henries = names[i + 1]?.startsWith("loss") ? parameters[i + 1]! : undefined;
    if (henries === undefined) rows.push(off(ohms / all, usual.acrossOhmsPerHenry));
    else sections.push({ henries, cornerHz: ohms / (2 * Math.PI * henries) });
  }
  const [one, other] = sections;
  if (one && other) rows.push(...offAsTwo(one, other, all, usual));
  else if (one) rows.push(...offAsOne(one, at("inductance"), usual));
  return rows;
}
