import type { Build } from "../../build-file/schema.ts";
import { listed } from "../../english.ts";
import { grouped, rowKey } from "./cell-groups.ts";
import type { TapCell } from "./tap-cells.ts";
import type { TapMap } from "./tap-map.ts";
import { pickupCalled } from "./tap-words.ts";

export interface TapVerdict {
  readonly verdict: "as-drawn" | "departs" | "unclear";
  readonly title: string;
}

const isLost = ({ isExpected, sounds }: TapCell) => isExpected && sounds === undefined;

/** Pickups that sound, and of which no tap told which way they swing; none where there is nothing to swing against. */
function unsidedPickups(cells: readonly TapCell[]): string[] {
  if (grouped(cells, rowKey).length < 2) return [];
  const sounding = cells.filter(({ isExpected, sounds }) => isExpected && sounds === true);
  return grouped(sounding, ({ heard: { step } }) => step.pickup)
    .filter((ofPickup) => ofPickup.every(({ agrees }) => agrees === undefined))
    .map(([first]) => first!.heard.step.pickup);
}

/** What a map of taps comes to: no more is as drawn than was told. */
export function tapVerdict(build: Build, { cells, departures }: TapMap): TapVerdict {
  if (departures.length > 0) {
    const [first, second] = departures;
    return { verdict: "departs", title: second ? `${departures.length} departures from the drawing.` : first!.message };
  }
  if (cells.some(isLost)) {
    return { verdict: "unclear", title: "Not clear: some rows lie between sounding and leaking in." };
  }
  const unsided = unsidedPickups(cells);
  if (unsided.length > 0) {
    const called = listed(unsided.map((pickup) => pickupCalled(build, pickup)));
    const swing = unsided.length > 1 ? "swing" : "swings";
    const title = `Every row sounds where it should; which way the ${called} ${swing} these taps do not tell.`;
    return { verdict: "unclear", title };
  }
  const swings = cells.some(({ agrees }) => agrees) ? ", and swings as it should" : "";
  return { verdict: "as-drawn", title: `As drawn: every row sounds where it should${swings}.` };
}
