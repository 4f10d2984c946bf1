import { localTrackLugs } from "../build-file/lug-names.ts";
import type { Pot } from "../build-file/schema.ts";
import { wiperShare } from "../build-file/taper.ts";
import type { NetworkBuilder } from "../network/elements.ts";

type Track = Pick<Pot, "resistance" | "measured" | "taper" | "midpoint" | "angles" | "endResistance">;
type NodeOf = (local: string) => number;

function tracksOf(pot: Pot): { track: Track; lugs: ReturnType<typeof localTrackLugs> }[] {
  return [pot, ...(pot.gangs ?? [])].map((track, gang) => ({ track, lugs: localTrackLugs(gang) }));
}

/** Ohms below and above the wiper. */
function trackHalves(track: Track, dial: number): [below: number, above: number] {
  const ohms = track.measured ?? track.resistance;
  const share = wiperShare(track, dial);
  return [share * ohms, (1 - share) * ohms];
}

/** Whether a no-load pot has its wiper on lug 3's dead end, off the track. */
export function liftsTrack(pot: Pot, dial: number): boolean {
  return pot.noLoad && dial === 10;
}

/** How many variable resistors a pot has. */
export function potTrackCount(pot: Pot): number {
  return 2 * (1 + (pot.gangs?.length ?? 0));
}

/** Writes a pot's resistances at a dial setting from index `first`: below and above the wiper, gang by gang. */
export function potTrackOhmsInto(pot: Pot, dial: number, ohms: Float64Array, first: number): void {
  [ohms[first], ohms[first + 1]] = trackHalves(pot, dial);
  for (const [index, gang] of (pot.gangs ?? []).entries())
    [ohms[first + 2 * index + 2], ohms[first + 2 * index + 3]] = trackHalves(gang, dial);
}

/** Adds a pot's tracks at a dial setting. The case touches nothing. */
export function addPot(network: NetworkBuilder, pot: Pot, dial: number, nodeOf: NodeOf): void {
  for (const [gang, { track, lugs }] of tracksOf(pot).entries()) {
    const [lug1, wiper, lug3] = lugs.map(nodeOf) as [number, number, number];
    const [below, above] = trackHalves(track, dial);
    if (gang === 0 && liftsTrack(pot, dial)) {
      network.resistor(wiper, lug3, 0);
      continue;
    }
    network.resistor(lug1, wiper, below);
    network.resistor(wiper, lug3, above);
  }
}

/** As `addPot`, with variable resistors numbered from `first` in the order of `potTrackOhmsInto`. */
export function addVariablePot(
  network: NetworkBuilder,
  pot: Pot,
  first: number,
  lifted: boolean,
  nodeOf: NodeOf,
): void {
  for (const [gang, { track, lugs }] of tracksOf(pot).entries()) {
    const [lug1, wiper, lug3] = lugs.map(nodeOf) as [number, number, number];
    if (gang === 0 && lifted) {
      network.resistor(wiper, lug3, 0);
      continue;
    }
    const half = (track.measured ?? track.resistance) / 2;
    network.variableResistor(lug1, wiper, half, first + 2 * gang);
    network.variableResistor(wiper, lug3, half, first + 2 * gang + 1);
  }
}
