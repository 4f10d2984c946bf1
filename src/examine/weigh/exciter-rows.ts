import type { Drive } from "./exciter-drive.ts";
import type { Transfer } from "./exciter-transfer.ts";

/**
 * At one frequency K·dT/dθ, without what a change of K alone would make as well (variable projection, G. H. Golub and V. Pereyra, 1973,
 * as L. Kaufman, 1975, shortens it).
 * @param rows of each unknown in turn: every take's real and imaginary parts, and last the drive's own
 * @param limit the root of the weight that holds the drive
 */
export function fillRows(
  i: number,
  rows: Float64Array,
  unknowns: readonly number[],
  transfers: readonly Transfer[],
  variances: readonly Float64Array[],
  drive: Drive,
  limit: number,
): void {
  const count = drive.re.length;
  const length = 2 * count * (transfers.length + 1);
  const [kRe, kIm, power] = [drive.re[i]!, drive.im[i]!, drive.power[i]!];
  for (const [k, unknown] of unknowns.entries()) {
    let [cRe, cIm] = [0, 0];
    const moves = transfers.map(({ unknowns: own, slopesRe, slopesIm, re, im }, j) => {
      const place = own.indexOf(unknown);
      if (place < 0) return [0, 0] as const;
      const [sRe, sIm] = [slopesRe[place * count + i]!, slopesIm[place * count + i]!];
      const [mRe, mIm] = [kRe * sRe - kIm * sIm, kRe * sIm + kIm * sRe];
      const weight = 1 / variances[j]![i]!;
      cRe += weight * (re[i]! * mRe + im[i]! * mIm);
      cIm += weight * (re[i]! * mIm - im[i]! * mRe);
      return [mRe, mIm] as const;
    });
    const [pRe, pIm] = power > 0 ? [cRe / power, cIm / power] : [0, 0];
    for (const [j, [mRe, mIm]] of moves.entries()) {
      const { re, im } = transfers[j]!;
      const weight = 1 / Math.sqrt(variances[j]![i]!);
      const at = k * length + 2 * count * j + i;
      rows[at] = weight * (mRe - pRe * re[i]! + pIm * im[i]!);
      rows[at + count] = weight * (mIm - pRe * im[i]! - pIm * re[i]!);
    }
    const last = k * length + 2 * count * transfers.length + i;
    rows[last] = -limit * pRe;
    rows[last + count] = -limit * pIm;
  }
}
