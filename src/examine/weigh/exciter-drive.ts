import type { Placement, Take } from "../takes/take.ts";
import type { Transfer } from "./exciter-transfer.ts";
import { STRAY_FIELD, TOGETHER } from "./floor.ts";

/** Takes of one placement, which share an unknown drive at every frequency. */
export interface Laid {
  readonly placement: Placement;
  readonly takes: readonly { readonly take: Take; readonly settingIndex: number }[];
}

/** Variance of each take's points: their own, the model's, and what the exciter reaches besides its coil. */
export function variancesOf({ takes }: Laid, floor: number): Float64Array[] {
  const count = takes[0]!.take.re.length;
  const strongest = Float64Array.from({ length: count }, (_, i) =>
    Math.max(...takes.map(({ take }) => Math.hypot(take.re[i]!, take.im[i]!))),
  );
  return takes.map(({ take: { re, im, sd } }) =>
    re.map((x, i) => {
      const square = (floor * Math.hypot(x, im[i]!)) ** 2 + (STRAY_FIELD * strongest[i]!) ** 2;
      return sd[i]! ** 2 + TOGETHER * square;
    }),
  );
}

/** The weight that holds a drive to what it may be; the frequencies that go together count as one here too. */
export const limitWeight = (most: number): number => (most > 0 ? 1 / (TOGETHER * most ** 2) : 0);

/** The drive that fits all takes best, frequency by frequency, held under what it may be. */
export interface Drive {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Σ |T|² / variance, the limit's own included. */
  readonly power: Float64Array;
}

/** @param most what a drive may be; 0 for anything */
export function driveOf(
  { takes }: Laid,
  transfers: readonly Transfer[],
  variances: readonly Float64Array[],
  most: number,
): Drive {
  const count = takes[0]!.take.re.length;
  const [re, im, power] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let i = 0; i < count; i++) {
    let [sumRe, sumIm, sum] = [0, 0, limitWeight(most)];
    for (const [j, { take }] of takes.entries()) {
      const [tRe, tIm] = [transfers[j]!.re[i]!, transfers[j]!.im[i]!];
      const weight = 1 / variances[j]![i]!;
      sumRe += weight * (tRe * take.re[i]! + tIm * take.im[i]!);
      sumIm += weight * (tRe * take.im[i]! - tIm * take.re[i]!);
      sum += weight * (tRe * tRe + tIm * tIm);
    }
    re[i] = sum > 0 ? sumRe / sum : 0;
    im[i] = sum > 0 ? sumIm / sum : 0;
    power[i] = sum;
  }
  return { re, im, power };
}
