import { RIG } from "../model/rig-unknowns.ts";
import type { Unknown } from "../model/unknowns.ts";
import type { View } from "../model/view.ts";
import type { Placement } from "../takes/take.ts";
import type { Subject } from "./evidence.ts";
import { gather } from "./slope-rows.ts";

/** How an exciter laid over one coil reaches the same pickup's other one, beside it (common practice, no source). */
const BESIDE_DEVIATION = 0.25;
/** And another pickup, some centimetres away: its field falls with the third power of the distance (common practice, no source). */
const FAR_DEVIATION = 0.02;
/** A hand moves it by a hair between takes; its level goes with it (common practice, no source). */
const LEVEL_DEVIATION = 0.03;
/** Seconds by which a recording without what was played may be late: marks are found to a part of a sample. */
const LATENESS_SECONDS = 20e-6;

const nameOf = ({ pickup, coil }: Placement) => `${pickup}.${coil}`;
const besideField = (placement: Placement) => `beside.${nameOf(placement)}`;
const farField = (placement: Placement, pickup: string) => `far.${nameOf(placement)}.${pickup}`;
const levelField = (placement: Placement, settingIndex: number) => `level.${nameOf(placement)}.${settingIndex}`;
const lateField = (placement: Placement, settingIndex: number) => `late.${nameOf(placement)}.${settingIndex}`;

/** A take of a placement, as far as its unknowns go. */
interface PlacedTake {
  readonly settingIndex: number;
  readonly hasReference: boolean;
}

/**
 * What is not known of a placement: how much of it goes into the other coil and into other pickups, and how strong and how late each
 * of its recordings is.
 * @param others the guard's other pickups
 */
export function placementUnknowns(
  placement: Placement,
  takes: readonly PlacedTake[],
  others: readonly string[],
): Unknown[] {
  const share = (field: string, deviation: number): Unknown => ({
    part: RIG,
    field,
    law: "share",
    deviation,
    tolerance: 0,
  });
  const settings = [...new Set(takes.map(({ settingIndex }) => settingIndex))];
  const late = new Set(takes.flatMap(({ settingIndex, hasReference }) => (hasReference ? [] : [settingIndex])));
  return [
    share(besideField(placement), BESIDE_DEVIATION),
    ...others.map((pickup) => share(farField(placement, pickup), FAR_DEVIATION)),
    // One take's level is the drive's own.
    ...settings.slice(1).map((index) => share(levelField(placement, index), LEVEL_DEVIATION)),
    ...[...late].map((index) => share(lateField(placement, index), 1)),
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

/** Where an exciter reaches by itself and where by a share that nobody knows: weights by source, a winding's sense in them. */
export interface Reach {
  readonly own: ReadonlyMap<number, number>;
  /** By the unknown's field. */
  readonly shares: ReadonlyMap<string, ReadonlyMap<number, number>>;
}

/** The coil laid over, the others of its pickup, and other pickups; what stands for a broken one too. */
export function reachOf(
  { sources }: Pick<View, "sources">,
  { build, standIns }: Pick<Subject, "build" | "standIns">,
  placement: Placement,
): Reach {
  const own = new Map<number, number>();
  const shares = new Map<string, Map<number, number>>();
  for (const [key, index] of sources) {
    const [part, name] = key.split(".") as [string, string];
    const spec = build.parts[part];
    if (spec?.kind !== "pickup") continue;
    const sense = spec.coils[name]!.winding === "forward" ? 1 : -1;
    const pickup = standIns.get(part) ?? part;
    if (pickup === placement.pickup && name === placement.coil) {
      own.set(index, sense);
      continue;
    }
    const field = pickup === placement.pickup ? besideField(placement) : farField(placement, pickup);
    const there = shares.get(field) ?? new Map<number, number>();
    shares.set(field, there.set(index, sense));
  }
  return { own, shares };
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
