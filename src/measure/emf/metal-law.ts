import type { Coil } from "../../build-file/schema.ts";
import { emfLaw } from "../../response/emf-law.ts";

/** What a fit tries of the metal about a coil, fewest first. */
export const METAL_LAWS = ["none", "pole", "shelf", "pole-and-shelf"] as const;
export type MetalLaw = (typeof METAL_LAWS)[number];

export type Metal = Exclude<NonNullable<Coil["shielding"]>, readonly unknown[]>;

/** A law as a list of positive values; fits work on their logarithms. */
interface LawShape {
  /** As the values stand in the list that a build file takes. */
  readonly names: readonly string[];
  readonly starts: readonly (readonly number[])[];
  metalsOf(values: Iterable<number>): Metal[];
}

/** About the corners and depths of measured metal: see METAL_TYPES. */
const POLES_HZ = [1500, 4000, 10_000];
const SHELVES = [
  [1000, 2],
  [2500, 4],
  [3500, 12],
] as const;

export const LAW_SHAPES: Readonly<Record<MetalLaw, LawShape>> = {
  none: { names: [], starts: [[]], metalsOf: () => [] },
  pole: {
    names: ["0.pole"],
    starts: POLES_HZ.map((pole) => [pole]),
    metalsOf: ([pole]) => [{ pole: pole! }],
  },
  shelf: {
    names: ["0.shelf", "0.depth"],
    starts: SHELVES,
    metalsOf: ([shelf, depth]) => [{ shelf: shelf!, depth: depth! }],
  },
  "pole-and-shelf": {
    names: ["0.shelf", "0.depth", "1.pole"],
    starts: POLES_HZ.flatMap((pole) => SHELVES.map(([shelf, depth]) => [shelf, depth, pole])),
    metalsOf: ([shelf, depth, pole]) => [{ shelf: shelf!, depth: depth! }, { pole: pole! }],
  },
};

/** What metal leaves of an EMF, in nepers. */
export function leftBy(metals: readonly Metal[], frequenciesHz: readonly number[]): Float64Array {
  const { re, im } = emfLaw([...metals])(Float64Array.from(frequenciesHz));
  return re.map((each, i) => Math.log(Math.hypot(each, im[i]!)));
}
