import type { Build } from "../../build-file/schema.ts";
import { Controls, type Settings } from "../../build-file/settings.ts";
import { listed } from "../../english.ts";
import { type ForetoldTap, foretoldTaps } from "./foretold-taps.ts";
import type { HeardTap } from "./hear-taps.ts";
import type { TapDeparture } from "./tap-departure.ts";
import { tapLogLikelihood } from "./tap-likelihood.ts";
import { type TapInput, TapTransfers } from "./tap-transfers.ts";

/** For each position from 1 the one that it plays as. */
type Places = readonly number[];

/** ln of the odds that positions have changed places, before anything is heard: a judgement, no source. */
const RARE = -5;

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

/** What the steps foretell, and which positions have changed places where that accounts for what was heard and the drawing does not. */
export function placedTaps(
  build: Build,
  heard: readonly HeardTap[],
  input: TapInput | undefined,
): { readonly foretold: readonly ForetoldTap[]; readonly departures: readonly TapDeparture[] } {
  const { main } = new Controls(build);
  const steps = heard.map(({ step }) => step);
  const transfers = new TapTransfers(build, input);
  const drawn = foretoldTaps(build, steps, input, transfers);
  if (!main) return { foretold: drawn, departures: [] };
  const played = (settings: Settings, places: Places): Settings => {
    const position = places[(settings.switches[main.name] ?? 1) - 1]!;
    return { ...settings, switches: { ...settings.switches, [main.name]: position } };
  };
  let best = { foretold: drawn, departures: [] as readonly TapDeparture[], worth: tapLogLikelihood(heard, drawn) };
  for (const places of exchangesOf(main.table.positions.length)) {
    const moved = steps.map((step) => ({ ...step, settings: played(step.settings, places) }));
    const foretold = foretoldTaps(build, moved, input, transfers);
    const worth = tapLogLikelihood(heard, foretold) + RARE;
    if (worth > best.worth) best = { foretold, departures: [{ kind: "exchanged", message: message(places) }], worth };
  }
  return best;
}
