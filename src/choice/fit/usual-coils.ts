import type { CoilShape } from "./coil-shapes.ts";

/** A value that coils have as a rule: its median, and the standard deviation of its logarithm. */
interface Usual {
  readonly median: number;
  readonly spread: number;
}

/**
 * What is known of a coil before anything is measured, as 22 real ones spread (open data set strayr/pickupAnalyseR-data, CC0-1.0,
 * reduced): a guide where measurements leave a value open, and nothing beside measurements that tell it. A section's share is of its
 * own inductance in it and the unbridged one together, its corner R/(2πL).
 */
const USUAL = {
  farads: { median: 150e-12, spread: 0.5 },
  share: { median: 0.22, spread: 0.5 },
  cornerHz: { median: 1800, spread: 0.7 },
  acrossOhms: { median: 1.2e6, spread: 1 },
} as const satisfies Readonly<Record<string, Usual>>;

const off = (value: number, { median, spread }: Usual) => Math.log(value / median) / spread;

/** How many standard deviations a coil's values lie from what is usual. */
export function unusualness({ names }: CoilShape, parameters: ArrayLike<number>): number[] {
  const at = (name: string) => parameters[names.indexOf(name)]!;
  const rows = [off(at("capacitance"), USUAL.farads)];
  for (const [i, name] of names.entries()) {
    const resistance = parameters[i]!;
    if (name === "loss") rows.push(off(resistance, USUAL.acrossOhms));
    if (!/^loss\.\d\.resistance$/.test(name)) continue;
    const henries = names[i + 1]?.startsWith("loss") ? parameters[i + 1]! : undefined;
    if (henries === undefined) rows.push(off(resistance, USUAL.acrossOhms));
    else {
      rows.push(off(henries / (at("inductance") + henries), USUAL.share));
      rows.push(off(resistance / (2 * Math.PI * henries), USUAL.cornerHz));
    }
  }
  return rows;
}
