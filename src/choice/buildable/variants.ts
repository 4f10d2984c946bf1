import { type Layout, layoutOf } from "../../build-file/plans/layouts.ts";
import type { Family } from "./families.ts";
import type { Stock, Track } from "./stock.ts";

/** Whose tone a tone pot is; empty for a master tone. */
export type ToneOf = readonly string[];

export interface Bleed {
  readonly cap: number;
  readonly resistor?: { readonly index: number; readonly joined: "parallel" | "series" };
}

/** The pots and caps of a guard, as places in the stock's lists. */
export interface Variant {
  readonly tones: readonly ToneOf[];
  readonly volumeTracks: readonly number[];
  readonly toneTracks: readonly number[];
  /** One a tone; one alone where two tones share it. */
  readonly toneCaps: readonly number[];
  readonly bleed: Bleed | undefined;
  /** Which pots are push-pulls, tones first. The rest of the switches are small ones of their own. */
  readonly pushPulls: readonly string[];
}

/** Customary values, common practice, no source: what is smaller or larger than these is no tone cap, no bleed. */
export const TONE_FARADS = { from: 1e-9, to: 220e-9 };
export const BLEED_FARADS = { from: 100e-12, to: 3.3e-9 };
export const BLEED_OHMS = { from: 47e3, to: 470e3 };

/** A bound that a printed value lies right on counts in, whatever rounding makes of it. */
export const isIn = ({ from, to }: { from: number; to: number }, value: number) =>
  value >= from * (1 - 1e-9) && value <= to * (1 + 1e-9);

const pairsOf = (...pairs: readonly (readonly [ToneOf, ToneOf])[]) => pairs;
/** Which tone works on what, as guards customarily have it. */
const THREE_PICKUPS = pairsOf(
  [["neck"], ["middle"]],
  [["neck"], ["bridge"]],
  [["middle"], ["bridge"]],
  [["neck", "middle"], ["bridge"]],
  [["neck", "bridge"], ["middle"]],
  [["neck"], ["middle", "bridge"]],
);

function tonesFor(layout: Layout, poleIsTaken: boolean): (readonly ToneOf[])[] {
  const { min, max } = layout.tones;
  const two: (readonly ToneOf[])[] = layout.pickups.length === 3 ? [...THREE_PICKUPS] : [[["neck"], ["bridge"]]];
  // Without a pole to part them, two pickups on one tone would be joined for good.
  const apart = poleIsTaken ? two.filter((tones) => tones.every((pickups) => pickups.length === 1)) : two;
  // The most tones first: who hears one guard of a wiring hears one that does the most.
  return [...(max === 2 ? apart : []), ...(min <= 1 && max >= 1 ? [[[]]] : []), ...(min === 0 ? [[]] : [])];
}

/** Every row of so many indices that takes none more often than there are of it. */
function* rows(counts: readonly number[], length: number): Generator<readonly number[]> {
  const left = [...counts];
  function* from(chosen: readonly number[]): Generator<readonly number[]> {
    if (chosen.length === length) {
      yield chosen;
      return;
    }
    for (const [index, count] of left.entries()) {
      if (count === 0) continue;
      left[index]!--;
      yield* from([...chosen, index]);
      left[index]!++;
    }
  }
  yield* from([]);
}

export function potNames(layout: Layout, tones: number): { volumes: string[]; tones: string[] } {
  const named = (role: string, count: number) =>
    count === 1 ? [role] : Array.from({ length: count }, (_, index) => `${role}${index + 1}`);
  return { volumes: named("volume", layout.volumes), tones: named("tone", tones) };
}

/**
 * The pots that are push-pulls: from the last tone on to the volumes as long as the tracks have them; a small switch is a hole in the
 * guard, and taken last. Undefined where there are too few of both.
 */
function pushPullsFor(
  wanted: number,
  pots: readonly { readonly name: string; readonly track: number }[],
  { tracks, smallSwitches }: Stock,
): string[] | undefined {
  const left = tracks.map(({ pushPulls }) => pushPulls);
  const carriers: string[] = [];
  for (const { name, track } of [...pots].reverse()) {
    if (carriers.length === wanted || left[track] === 0) continue;
    left[track]!--;
    carriers.push(name);
  }
  return wanted - carriers.length <= smallSwitches ? carriers : undefined;
}

/** No bleed, or one alike over each volume of what the tone caps leave. */
function* bleeds(stock: Stock, volumes: number, toneCaps: readonly number[]): Generator<Bleed | undefined> {
  yield undefined;
  const capsLeft = stock.caps.map(({ count }, index) => count - toneCaps.filter((each) => each === index).length);
  for (const [cap, { part }] of stock.caps.entries()) {
    if (capsLeft[cap]! < volumes || !isIn(BLEED_FARADS, part.capacitance)) continue;
    yield { cap };
    for (const [index, { part: resistor, count }] of stock.resistors.entries()) {
      if (count < volumes || !isIn(BLEED_OHMS, resistor.resistance)) continue;
      yield { cap, resistor: { index, joined: "parallel" } };
      yield { cap, resistor: { index, joined: "series" } };
    }
  }
}

function* capRows(stock: Stock, tones: number): Generator<readonly number[]> {
  const usable = stock.caps.map(({ count, part }) => (isIn(TONE_FARADS, part.capacitance) ? count : 0));
  yield* rows(usable, tones);
  if (tones === 2) yield* rows(usable, 1);
}

/** A no-load volume cuts its own track off at 10 and is for tones. */
const isVolume = ({ part }: Track) => !part.noLoad;

/** Every choice of tones, pots, caps and bleed that the stock allows to a family. */
export function* variants(family: Family, stock: Stock): Generator<Variant> {
  const layout = layoutOf(family.layout);
  const counts = stock.tracks.map(({ count }) => count);
  for (const tones of tonesFor(layout, family.automatic.length > 0)) {
    const names = potNames(layout, tones.length);
    for (const tracks of rows(counts, layout.volumes + tones.length)) {
      const volumeTracks = tracks.slice(0, layout.volumes);
      if (!volumeTracks.every((track) => isVolume(stock.tracks[track]!))) continue;
      const pots = [...names.volumes, ...names.tones].map((name, index) => ({ name, track: tracks[index]! }));
      const pushPulls = pushPullsFor(family.switched.length, pots, stock);
      if (!pushPulls) continue;
      const toneTracks = tracks.slice(layout.volumes);
      for (const toneCaps of capRows(stock, tones.length))
        for (const bleed of bleeds(stock, layout.volumes, toneCaps))
          yield { tones, volumeTracks, toneTracks, toneCaps, bleed, pushPulls };
    }
  }
}
