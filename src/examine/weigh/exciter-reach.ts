import { RIG } from "../model/rig-unknowns.ts";
import type { Unknown } from "../model/unknowns.ts";
import type { View } from "../model/view.ts";
import type { Placement } from "../takes/take.ts";
import type { Subject } from "./evidence.ts";

/** How an exciter laid over one coil reaches the same pickup's other one, beside it (common practice, no source). */
const BESIDE_DEVIATION = 0.25;
/** And another pickup, some centimetres away: its field falls with the third power of the distance (common practice, no source). */
const FAR_DEVIATION = 0.02;
/** A hand moves it by a hair between takes; its level goes with it (common practice, no source). */
const LEVEL_DEVIATION = 0.03;
/** Seconds by which a recording without what was played may be late: marks are found to a part of a sample. */
export const LATENESS_SECONDS = 20e-6;

const nameOf = ({ pickup, coil }: Placement) => `${pickup}.${coil}`;
const besideField = (placement: Placement) => `beside.${nameOf(placement)}`;
/** Of each coil by itself: a field that falls off is no even one over both coils of a humbucker. */
const farField = (placement: Placement, far: Placement) => `far.${nameOf(placement)}.${nameOf(far)}`;
export const levelField = (placement: Placement, settingIndex: number) => `level.${nameOf(placement)}.${settingIndex}`;
export const lateField = (placement: Placement, settingIndex: number) => `late.${nameOf(placement)}.${settingIndex}`;

/** A take of a placement, as far as its unknowns go. */
interface PlacedTake {
  readonly settingIndex: number;
  readonly hasReference: boolean;
}

/**
 * What is not known of a placement: how much of it goes into the other coil and into other pickups, and how strong and how late each
 * of its recordings is.
 * @param others the coils of the guard's other pickups
 */
export function placementUnknowns(
  placement: Placement,
  takes: readonly PlacedTake[],
  others: readonly Placement[],
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
    ...others.map((far) => share(farField(placement, far), FAR_DEVIATION)),
    // One take's level is the drive's own.
    ...settings.slice(1).map((index) => share(levelField(placement, index), LEVEL_DEVIATION)),
    ...[...late].map((index) => share(lateField(placement, index), 1)),
  ];
}

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
    const field = pickup === placement.pickup ? besideField(placement) : farField(placement, { pickup, coil: name });
    const there = shares.get(field) ?? new Map<number, number>();
    shares.set(field, there.set(index, sense));
  }
  return { own, shares };
}
