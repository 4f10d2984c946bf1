import { type CoilShape, LOSS_MODELS, type LossModel } from "./coil-shapes.ts";

/** What stands in a coil, as far as it decides how its inductance falls with frequency. */
export const COIL_TYPES = ["rods", "steel-single", "wide-single", "humbucker", "covered"] as const;
export type CoilType = (typeof COIL_TYPES)[number];

/** A value that coils have as a rule: its median, and the standard deviation of its logarithm. */
interface Usual {
  readonly median: number;
  readonly spread: number;
}

/**
 * What is known of a coil before anything is measured: a guide where measurements leave a value open, and nothing beside measurements
 * that tell it. A section's share is of its own inductance in it and the unbridged one together, its corner R/(2πL).
 */
export interface UsualCoil {
  readonly farads: Usual;
  readonly share: Usual;
  readonly cornerHz: Usual;
  /** Of what bridges the whole inductance, for each henry of it: both go as the turns squared. */
  readonly acrossOhmsPerHenry: Usual;
  readonly models: readonly LossModel[];
}

/** Medians and spreads of 22 real coils together (open data set strayr/pickupAnalyseR-data, CC0-1.0, reduced). */
export const ANY_COIL: UsualCoil = {
  farads: { median: 150e-12, spread: 0.5 },
  share: { median: 0.22, spread: 0.5 },
  cornerHz: { median: 1800, spread: 0.7 },
  acrossOhmsPerHenry: { median: 400e3, spread: 0.9 },
  models: LOSS_MODELS,
};

const STEEL: UsualCoil = { ...ANY_COIL, models: ["one-section", "section-and-resistor", "two-sections"] };

/** Of the same set by type; two or three coils of a type tell a median, and their spread is that of all humbuckers. */
const BY_TYPE: Readonly<Record<CoilType, UsualCoil>> = {
  rods: { ...ANY_COIL, models: ["none", "resistor"] },
  "steel-single": { ...STEEL, share: { median: 0.24, spread: 0.4 }, cornerHz: { median: 1550, spread: 0.5 } },
  "wide-single": { ...STEEL, share: { median: 0.33, spread: 0.4 }, cornerHz: { median: 1850, spread: 0.5 } },
  humbucker: { ...STEEL, share: { median: 0.2, spread: 0.4 }, cornerHz: { median: 1500, spread: 0.5 } },
  covered: { ...STEEL, share: { median: 0.4, spread: 0.4 }, cornerHz: { median: 2100, spread: 0.5 } },
};

export const usualCoil = (type: CoilType | undefined): UsualCoil => (type ? BY_TYPE[type] : ANY_COIL);

const off = (value: number, { median, spread }: Usual) => Math.log(value / median) / spread;

/** How many standard deviations a coil's values lie from what is usual. */
export function unusualness({ names }: CoilShape, parameters: ArrayLike<number>, usual: UsualCoil): number[] {
  const at = (name: string) => parameters[names.indexOf(name)]!;
  const rows = [off(at("capacitance"), usual.farads)];
  const all = names.reduce((sum, name, i) => (name.endsWith("inductance") ? sum + parameters[i]! : sum), 0);
  const across = (ohms: number) => off(ohms / all, usual.acrossOhmsPerHenry);
  for (const [i, name] of names.entries()) {
    const resistance = parameters[i]!;
    if (name === "loss") rows.push(across(resistance));
    if (!/^loss\.\d\.resistance$/.test(name)) continue;
    const henries = names[i + 1]?.startsWith("loss") ? parameters[i + 1]! : undefined;
    if (henries === undefined) rows.push(across(resistance));
    else {
      rows.push(off(henries / (at("inductance") + henries), usual.share));
      rows.push(off(resistance / (2 * Math.PI * henries), usual.cornerHz));
    }
  }
  return rows;
}
