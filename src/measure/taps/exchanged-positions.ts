import type { Build } from "../../build-file/schema.ts";
import { Controls, type Settings } from "../../build-file/settings.ts";
import { listed } from "../../english.ts";
import { type ForetoldTap, foretoldTaps } from "./foretold-taps.ts";
import type { TapStep } from "./plan-taps.ts";
import type { TapTransfers } from "./tap-transfers.ts";

/** What taps would make were something in another's place, and what that is. */
export interface Exchange {
  readonly foretold: readonly ForetoldTap[];
  readonly message: string;
}

/** For each position from 1 the one that it plays as. */
type Places = readonly number[];

function exchangesOf(count: number): Places[] {
  const asDrawn = Array.from({ length: count }, (_, i) => i + 1);
  const pairs = asDrawn.flatMap((a) =>
    asDrawn.filter((b) => b > a).map((b) => asDrawn.map((each) => (each === a ? b : each === b ? a : each))),
  );
  const reversed = [...asDrawn].reverse();
  return count > 3 ? [...pairs, reversed] : pairs;
}

function message(places: Places): string {
  const moved = places.flatMap((to, i) => (to === i + 1 ? [] : [i + 1]));
  const isPair = moved.length === 2;
  const isFromOtherEnd = places.every((to, i) => to === places.length - i);
  const exchanged = `Positions ${listed(moved)} of the switch are exchanged: each plays what the other should`;
  if (isPair && !isFromOtherEnd) return `${exchanged}.`;
  if (isPair) return `${exchanged}, as where the lever is counted from the other end.`;
  const last = places.length;
  return `The switch's positions are counted from the other end: position 1 plays what position ${last} should, and position ${last} what position 1 should, with all between them turned about likewise.`;
}

/** What a lever of main positions would play as, were some of them exchanged. */
export function exchangedPositions(build: Build, steps: readonly TapStep[], transfers: TapTransfers): Exchange[] {
  const { main } = new Controls(build);
  if (!main) return [];
  const played = (settings: Settings, places: Places): Settings => {
    const position = places[(settings.switches[main.name] ?? 1) - 1]!;
    return { ...settings, switches: { ...settings.switches, [main.name]: position } };
  };
  return exchangesOf(main.table.positions.length).map((places) => {
    const moved = steps.map((step) => ({ ...step, settings: played(step.settings, places) }));
    return { foretold: foretoldTaps(build, moved, undefined, transfers), message: message(places) };
  });
}
