import { RIG } from "../model/rig-unknowns.ts";
import type { View } from "../model/view.ts";
import type { Placement } from "../takes/take.ts";
import type { Subject } from "./evidence.ts";
import { LATENESS_SECONDS, lateField, levelField, reachOf } from "./exciter-reach.ts";
import { gather } from "./slope-rows.ts";

export interface Transfer {
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly unknowns: readonly number[];
  /** By unknown, then frequency. */
  readonly slopesRe: Float64Array;
  readonly slopesIm: Float64Array;
}

const silent = (count: number): Transfer => ({
  re: new Float64Array(count),
  im: new Float64Array(count),
  unknowns: [],
  slopesRe: new Float64Array(0),
  slopesIm: new Float64Array(0),
});

/** What reaches the jack of an EMF in the coil that an exciter lies over. */
export function transferAt(
  view: View,
  subject: Subject,
  placement: Placement,
  settingIndex: number,
  frequenciesHz: Float64Array,
): Transfer {
  const { build, point } = subject;
  const count = frequenciesHz.length;
  const { port } = view;
  const { own, shares } = reachOf(view, subject, placement);
  if (!port || own.size === 0) return silent(count);
  const most = Math.max(...view.sources.values()) + 1;
  const listOf = (weights: ReadonlyMap<number, number>) =>
    Array.from({ length: most }, (_, index) => weights.get(index) ?? 0);
  const reached = [...shares].flatMap(([field, weights]) => {
    const unknown = point.unknowns.indexOf(RIG, field);
    return unknown < 0 ? [] : [{ unknown, list: listOf(weights) }];
  });
  const list = reached.reduce(
    (sum, { unknown, list: each }) => sum.map((weight, k) => weight + point.values[unknown]! * each[k]!),
    listOf(own),
  );
  const { values, unknowns: moved, slots, places, slopes } = gather(view, build, point);
  const level = point.unknowns.indexOf(RIG, levelField(placement, settingIndex));
  const late = point.unknowns.indexOf(RIG, lateField(placement, settingIndex));
  const unknowns = [...moved, ...reached.map(({ unknown }) => unknown), ...[level, late].filter((index) => index >= 0)];
  const [re, im] = [new Float64Array(count), new Float64Array(count)];
  const slopesRe = new Float64Array(unknowns.length * count);
  const slopesIm = new Float64Array(unknowns.length * count);
  const [dRe, dIm] = [new Float64Array(values.length), new Float64Array(values.length)];
  const seconds = late < 0 ? 0 : LATENESS_SECONDS * point.values[late]!;
  const gain = level < 0 ? 1 : Math.exp(point.values[level]!);
  for (let i = 0; i < count; i++) {
    const omega = 2 * Math.PI * frequenciesHz[i]!;
    const [cos, sin] = [gain * Math.cos(omega * seconds), -gain * Math.sin(omega * seconds)];
    port.solveAt(frequenciesHz[i]!, values);
    const [tRe, tIm] = port.transfer(list);
    re[i] = tRe * cos - tIm * sin;
    im[i] = tRe * sin + tIm * cos;
    port.transferSlopes(list, dRe, dIm);
    const add = (place: number, x: number, y: number) => {
      slopesRe[place * count + i]! += x * cos - y * sin;
      slopesIm[place * count + i]! += x * sin + y * cos;
    };
    for (let each = 0; each < slots.length; each++)
      add(places[each]!, dRe[slots[each]!]! * slopes[each]!, dIm[slots[each]!]! * slopes[each]!);
    for (const [k, { list: each }] of reached.entries()) add(moved.length + k, ...port.transfer(each));
    let next = moved.length + reached.length;
    if (level >= 0) add(next++, tRe, tIm);
    if (late >= 0) add(next, omega * LATENESS_SECONDS * tIm, -omega * LATENESS_SECONDS * tRe);
  }
  return { re, im, unknowns, slopesRe, slopesIm };
}
