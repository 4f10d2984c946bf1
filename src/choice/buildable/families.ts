import { LAYOUT_NAMES, type Layout, type LayoutName, layoutOf } from "../../build-file/plans/layouts.ts";
import type { Pickup } from "../../build-file/schema.ts";
import { type AutomaticSplit, automaticSplits, optionsFor, switchings, takenBy, type Worked } from "./options.ts";
import type { Alike, Stock } from "./stock.ts";

/** Guards that differ in their pots, caps and tones alone. */
export interface Family {
  readonly layout: LayoutName;
  /** By place, from the bridge to the neck. */
  readonly pickups: ReadonlyMap<string, Alike<Pickup>>;
  readonly switched: readonly Worked[];
  readonly automatic: readonly AutomaticSplit[];
}

/** A guard's pots carry three push-pulls at most; more switches than that are not looked for. */
export const MOST_SWITCHES = 3;

const SELECTOR_PARTS: Readonly<Record<Layout["selector"], string | undefined>> = {
  "lever-5": "lever-5",
  "lever-3": "lever-3",
  "lever-3-pair": "lever-3",
  "toggle-3": "toggle-3",
  none: undefined,
};

function hasSelector({ selectors }: Stock, { selector }: Layout): boolean {
  const part = SELECTOR_PARTS[selector];
  return part === undefined || (selectors[part] ?? 0) > 0;
}

/** Every way to put pickups into the places; of pickups alike, which is where makes no difference. */
function* placings(
  stock: readonly Alike<Pickup>[],
  places: readonly string[],
): Generator<ReadonlyMap<string, Alike<Pickup>>> {
  const left = stock.map(({ count }) => count);
  function* from(index: number, placed: readonly [string, Alike<Pickup>][]): Generator<Map<string, Alike<Pickup>>> {
    if (index === places.length) {
      yield new Map(placed);
      return;
    }
    for (const [i, pickup] of stock.entries()) {
      if (left[i] === 0) continue;
      left[i]!--;
      yield* from(index + 1, [...placed, [places[index]!, pickup]]);
      left[i]!++;
    }
  }
  yield* from(0, []);
}

export interface FamilyQuestion {
  readonly layouts?: readonly LayoutName[] | undefined;
  /** Whether the guitar has its jack, so that none has to lie in the drawer. */
  readonly hasJack: boolean;
}

/** Every layout, pickups in their places and what switches do to them that the stock allows. */
export function* families(stock: Stock, { layouts = LAYOUT_NAMES, hasJack }: FamilyQuestion): Generator<Family> {
  if (!hasJack && stock.jacks === 0) return;
  const pushPulls = stock.tracks.reduce((sum, track) => sum + track.pushPulls, 0);
  const switches = Math.min(MOST_SWITCHES, pushPulls + stock.smallSwitches);
  for (const name of layouts) {
    const layout = layoutOf(name);
    if (!hasSelector(stock, layout)) continue;
    for (const pickups of placings(stock.pickups, layout.pickups)) {
      const placed = new Map([...pickups].map(([place, { part }]) => [place, part]));
      const automatic = layout.selector === "lever-5" ? automaticSplits(placed) : [[]];
      for (const switched of switchings(optionsOf(layout, placed), switches)) {
        const taken = takenBy(switched);
        for (const splits of automatic)
          if (!splits.some(({ pickup }) => taken.has(pickup)))
            yield { layout: name, pickups, switched, automatic: splits };
      }
    }
  }
}

function optionsOf({ selector }: Layout, placed: ReadonlyMap<string, Pickup>) {
  return optionsFor(placed).filter(({ kind }) => kind !== "alwaysOn" || selector !== "none");
}
