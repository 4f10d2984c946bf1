import { type EndRange, endRangeOf } from "../../build-file/end-resistance.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import type { Patch } from "../variant.ts";

/** What the ends of a pot's track may have from guard to guard: evenly on a log scale between two bounds, in ohms. */
export interface EndSpread extends EndRange {
  readonly part: string;
  readonly field: string;
}

/** Every track whose ends nobody measured. */
export function endSpreadsOf(build: Build): EndSpread[] {
  return partsOfKind(build, "pot").flatMap(([part, pot]) =>
    [pot, ...(pot.gangs ?? [])].flatMap((track, gang): EndSpread[] => {
      const range = endRangeOf(pot, track);
      const field = gang === 0 ? "endResistance" : `gangs.${gang - 1}.endResistance`;
      return range ? [{ part, field, ...range }] : [];
    }),
  );
}

export function drawEnds(ends: readonly EndSpread[], uniform: () => number): Patch[] {
  return ends.map(({ part, field, low, high }) => ({ part, field, value: low * (high / low) ** uniform() }));
}
