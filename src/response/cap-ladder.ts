import { dielectricOf } from "../build-file/catalogue/dielectrics.ts";
import type { PartOf } from "../build-file/schema.ts";

/** A capacitance with relaxing ones beside it, each behind a resistor. */
export interface CapLadder {
  readonly farads: number;
  readonly branches: readonly { readonly ohms: number; readonly farads: number }[];
}

/** Where the loss is what the dielectric says; three branches hold it even between. */
const RELAXATIONS_HZ = [100, 1000, 10_000] as const;

/** Solves a small system by elimination; with any tan δ allowed its pivots stay near a half, so that no row need change places. */
function solved(rows: number[][]): number[] {
  const size = rows.length;
  for (let pivot = 0; pivot < size; pivot++)
    for (let row = 0; row < size; row++) {
      if (row === pivot) continue;
      const share = rows[row]![pivot]! / rows[pivot]![pivot]!;
      for (let column = pivot; column <= size; column++) rows[row]![column]! -= share * rows[pivot]![column]!;
    }
  return rows.map((row, index) => row[size]! / row[index]!);
}

/**
 * Shares of the capacitance at 1 kHz: the stiff one, then those that relax at 100 Hz, 1 kHz and 10 kHz, each as 1/(1 + jf/f_i)
 * (Debye). They are such that loss over capacitance is tan δ at those three frequencies and the whole is 1 at 1 kHz.
 */
function sharesFor(tanDelta: readonly number[]): number[] {
  const real = (hertz: number) => [1, ...RELAXATIONS_HZ.map((at) => 1 / (1 + (hertz / at) ** 2))];
  const lossy = (hertz: number) => [0, ...RELAXATIONS_HZ.map((at) => hertz / at / (1 + (hertz / at) ** 2))];
  const rows = RELAXATIONS_HZ.map((hertz, k) => {
    const within = real(hertz);
    return [...lossy(hertz).map((part, i) => part - tanDelta[k]! * within[i]!), 0];
  });
  return solved([[...real(1000), 1], ...rows]);
}

/** Nobody could hear or measure the loss of less, and its branches would drown in rounding. */
const LEAST_LOSS = 1e-9;
const LEAST_FARADS = 1e-18;

/** tan δ of a cap at 1 kHz and at 10 kHz; null where nothing is said of it. */
export function lossOf({ dielectric, lossFactor }: PartOf<"cap">): readonly [number, number] | null {
  if (lossFactor !== undefined) return lossFactor < LEAST_LOSS ? null : [lossFactor, lossFactor];
  return dielectric === undefined ? null : dielectricOf(dielectric).loss;
}

/**
 * A cap as lumped parts. Without a word on its loss it is ideal. A dielectric's loss factor is about constant over frequency, which
 * neither one resistor across it (∝ 1/f) nor one in line (∝ f) gives: three relaxing branches hold tan δ within a tenth from 100 Hz to
 * 10 kHz. Below 1 kHz it is taken as at 1 kHz. The capacitance is that at 1 kHz, where meters read it.
 */
export function capLadder(cap: PartOf<"cap">): CapLadder {
  const loss = lossOf(cap);
  const { capacitance } = cap;
  if (!loss || capacitance < LEAST_FARADS) return { farads: capacitance, branches: [] };
  const [stiff, ...shares] = sharesFor([loss[0], loss[0], loss[1]]);
  return {
    farads: stiff! * capacitance,
    branches: shares.map((share, k) => {
      const farads = share * capacitance;
      return { farads, ohms: 1 / (2 * Math.PI * RELAXATIONS_HZ[k]! * farads) };
    }),
  };
}
