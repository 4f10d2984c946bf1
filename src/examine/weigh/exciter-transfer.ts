import { RIG } from "../model/rig-unknowns.ts";
import type { Unknown } from "../model/unknowns.ts";
import type { View } from "../model/view.ts";
import type { Placement } from "../takes/take.ts";
import type { Subject } from "./evidence.ts";
import { gather } from "./slope-rows.ts";

/** How an exciter laid over one coil reaches the same pickup's other one, beside it (common practice, no source). */
const BESIDE_DEVIATION = 0.25;
/** Seconds by which a recording without what was played may be late: marks are found to a part of a sample. */
const LATENESS_SECONDS = 20e-6;

const besideField = ({ pickup, coil }: Placement) => `beside.${pickup}.${coil}`;
const lateField = (settingIndex: number, { pickup, coil }: Placement) => `late.${pickup}.${coil}.${settingIndex}`;

/** What is not known of a placement: how much of it goes into the other coil, and how late each of its recordings is. */
export function placementUnknowns(placement: Placement, lateTakes: readonly number[]): Unknown[] {
  const share = (field: string, deviation: number): Unknown => ({
    part: RIG,
    field,
    law: "share",
    deviation,
    tolerance: 0,
  });
  return [
    share(besideField(placement), BESIDE_DEVIATION),
    ...lateTakes.map((settingIndex) => share(lateField(settingIndex, placement), 1)),
  ];
}

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

/** Sources with an EMF and its winding's sense: the coil laid over, and the others of its pickup; what stands for a broken one too. */
export function weightsFor(
  { sources }: View,
  { build, standIns }: Pick<Subject, "build" | "standIns">,
  { pickup, coil }: Placement,
) {
  const [own, beside] = [new Map<number, number>(), new Map<number, number>()];
  for (const [key, index] of sources) {
    const [part, name] = key.split(".") as [string, string];
    const spec = build.parts[part];
    if (spec?.kind !== "pickup" || (standIns.get(part) ?? part) !== pickup) continue;
    (name === coil ? own : beside).set(index, spec.coils[name]!.winding === "forward" ? 1 : -1);
  }
  return { own, beside };
}

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
  const { own, beside } = weightsFor(view, subject, placement);
  if (!port || own.size === 0) return silent(count);
  const stray = point.at(RIG, besideField(placement));
  const most = Math.max(...view.sources.values()) + 1;
  const besideList = Array.from({ length: most }, (_, index) => beside.get(index) ?? 0);
  const list = besideList.map((weight, index) => (own.get(index) ?? 0) + stray * weight);
  const { values, unknowns: moved, slots, places, slopes } = gather(view, build, point);
  const late = point.unknowns.indexOf(RIG, lateField(settingIndex, placement));
  const unknowns = [...moved, point.unknowns.indexOf(RIG, besideField(placement)), ...(late < 0 ? [] : [late])];
  const [re, im] = [new Float64Array(count), new Float64Array(count)];
  const slopesRe = new Float64Array(unknowns.length * count);
  const slopesIm = new Float64Array(unknowns.length * count);
  const [dRe, dIm] = [new Float64Array(values.length), new Float64Array(values.length)];
  const seconds = late < 0 ? 0 : LATENESS_SECONDS * point.values[late]!;
  for (let i = 0; i < count; i++) {
    const omega = 2 * Math.PI * frequenciesHz[i]!;
    const [cos, sin] = [Math.cos(omega * seconds), -Math.sin(omega * seconds)];
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
    add(moved.length, ...port.transfer(besideList));
    if (late >= 0) add(moved.length + 1, omega * LATENESS_SECONDS * tIm, -omega * LATENESS_SECONDS * tRe);
  }
  return { re, im, unknowns, slopesRe, slopesIm };
}
