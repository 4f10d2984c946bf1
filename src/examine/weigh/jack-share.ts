import { RIG } from "../model/rig-unknowns.ts";
import type { View } from "../model/view.ts";
import type { Subject } from "./evidence.ts";
import { gather } from "./slope-rows.ts";

/** What is left of the played voltage behind the resistor, and how it moves with each unknown. */
export interface Share {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly unknowns: readonly number[];
  /** By unknown, then frequency. */
  readonly slopesRe: Float64Array;
  readonly slopesIm: Float64Array;
}

/** t = g·Z / (Z + R). */
export function shareAt(
  view: View,
  { build, point }: Pick<Subject, "build" | "point">,
  frequenciesHz: Float64Array,
): Share {
  const count = frequenciesHz.length;
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  if (!view.port) return { re, im, unknowns: [], slopesRe: new Float64Array(0), slopesIm: new Float64Array(0) };
  const { port } = view;
  const gathered = gather(view, build, point);
  const { values, slots, places, slopes } = gathered;
  const resistor = point.unknowns.indexOf(RIG, "resistor");
  const gain = point.unknowns.indexOf(RIG, "gain");
  const unknowns = [...gathered.unknowns, resistor, gain];
  const own = gathered.unknowns.length;
  const ohms = point.unknowns.rig.resistorOhms * Math.exp(point.values[resistor]!);
  const g = Math.exp(point.values[gain]!);
  const slopesRe = new Float64Array(unknowns.length * count);
  const slopesIm = new Float64Array(unknowns.length * count);
  const dRe = new Float64Array(values.length);
  const dIm = new Float64Array(values.length);
  for (let i = 0; i < count; i++) {
    port.solveAt(frequenciesHz[i]!, values);
    port.impedanceSlopes(dRe, dIm);
    const zRe = port.impedanceRe;
    const zIm = port.impedanceIm;
    const sRe = zRe + ohms;
    const sIm = zIm;
    const norm = sRe * sRe + sIm * sIm;
    const tRe = (g * (zRe * sRe + zIm * sIm)) / norm;
    const tIm = (g * (zIm * sRe - zRe * sIm)) / norm;
    re[i] = tRe;
    im[i] = tIm;
    // dt/dZ = g·R / (Z + R)²
    const qRe = sRe * sRe - sIm * sIm;
    const qIm = 2 * sRe * sIm;
    const fRe = (g * ohms * qRe) / (norm * norm);
    const fIm = (-g * ohms * qIm) / (norm * norm);
    for (let each = 0; each < slots.length; each++) {
      const aRe = dRe[slots[each]!]! * slopes[each]!;
      const aIm = dIm[slots[each]!]! * slopes[each]!;
      const at = places[each]! * count + i;
      slopesRe[at]! += aRe * fRe - aIm * fIm;
      slopesIm[at]! += aRe * fIm + aIm * fRe;
    }
    // d/d ln R = −t·R / (Z + R)
    slopesRe[own * count + i] = (-ohms * (tRe * sRe + tIm * sIm)) / norm;
    slopesIm[own * count + i] = (-ohms * (tIm * sRe - tRe * sIm)) / norm;
    slopesRe[(own + 1) * count + i] = tRe;
    slopesIm[(own + 1) * count + i] = tIm;
  }
  return { re, im, unknowns, slopesRe, slopesIm };
}
