import type { Placement, Take } from "../takes/take.ts";
import type { Transfer } from "./exciter-transfer.ts";
import { FAINT, STRAY_FIELD, TOGETHER } from "./floor.ts";

/** Takes of one placement, which share an unknown drive at every frequency. */
export interface Laid {
  readonly placement: Placement;
  readonly takes: readonly { readonly take: Take; readonly settingIndex: number }[];
}

/** How strong the strongest of takes is, frequency by frequency. */
export function strongestOf(takes: Laid["takes"]): Float64Array {
  return Float64Array.from({ length: takes[0]!.take.re.length }, (_, i) =>
    Math.max(...takes.map(({ take }) => Math.hypot(take.re[i]!, take.im[i]!))),
  );
}

/**
 * Variance of each take's points: their own, the model's, and what the exciter reaches besides its coil.
 * @param loudest of all placements: one that is heard by its stray field alone has no stronger take to tell that by
 */
export function variancesOf({ takes }: Laid, floor: number, loudest?: Float64Array): Float64Array[] {
  const stray = strongestOf(takes).map((own, i) => STRAY_FIELD * Math.max(own, FAINT * (loudest?.[i] ?? 0)));
  return takes.map(({ take: { re, im, sd } }) =>
    re.map((x, i) => {
      const square = (floor * Math.hypot(x, im[i]!)) ** 2 + stray[i]! ** 2;
      return sd[i]! ** 2 + TOGETHER * square;
    }),
  );
}

/** What a drive is taken to be before its own takes: normal about the other placements', by far wider than it is strong. */
export interface UsualDrive {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** How far it may be off, RMS; 0 for anything. */
  readonly most: number;
}

/** The weight that holds a drive to what it may be; the frequencies that go together count as one here too. */
export const limitWeight = ({ most }: UsualDrive): number => (most > 0 ? 1 / (TOGETHER * most ** 2) : 0);

/** The drive that fits all takes best, frequency by frequency, held to what it may be. */
export interface Drive {
  readonly re: Float64Array;
  readonly im: Float64Array;
  /** Σ |T|² / variance, the limit's own included. */
  readonly power: Float64Array;
}

export function driveOf(
  { takes }: Laid,
  transfers: readonly Transfer[],
  variances: readonly Float64Array[],
  usual: UsualDrive,
): Drive {
  const count = takes[0]!.take.re.length;
  const [re, im, power] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  const limit = limitWeight(usual);
  for (let i = 0; i < count; i++) {
    let [sumRe, sumIm, sum] = [limit * usual.re[i]!, limit * usual.im[i]!, limit];
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
