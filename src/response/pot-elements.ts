import { SECOND_GANG_LUGS } from "../build/lugs.ts";
import type { Pot } from "../build/schema.ts";
import { wiperFraction } from "../build/taper.ts";
import type { NetworkBuilder } from "../network/elements.ts";

type Track = Pick<Pot, "resistance" | "measured" | "taper" | "midpoint">;

function addTrack(network: NetworkBuilder, track: Track, dial: number, nodes: readonly [number, number, number]): void {
  const [lug1, wiper, lug3] = nodes;
  const ohms = track.measured ?? track.resistance;
  const below = wiperFraction(track, dial);
  network.resistor(lug1, wiper, below * ohms);
  network.resistor(wiper, lug3, (1 - below) * ohms);
}

/** Adds a pot's tracks at a dial setting. The case touches nothing. */
export function addPot(network: NetworkBuilder, pot: Pot, dial: number, nodeOf: (local: string) => number): void {
  const liftsTrack = pot.noLoad && dial === 10;
  if (liftsTrack) network.resistor(nodeOf("2"), nodeOf("3"), 0);
  else addTrack(network, pot, dial, [nodeOf("1"), nodeOf("2"), nodeOf("3")]);
  for (const gang of pot.gangs ?? []) {
    const [b1, b2, b3] = SECOND_GANG_LUGS;
    addTrack(network, gang, dial, [nodeOf(b1), nodeOf(b2), nodeOf(b3)]);
  }
}
