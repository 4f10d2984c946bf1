import { type Guard, namesOf, netAt } from "../guard.ts";
import type { BleedSketch } from "../sketch.ts";
import { legNets, sameNets } from "./legs.ts";

/** The cap, and the resistor with it, from a volume's input to its output. */
function bleedAt(
  guard: Guard,
  volume: string,
  caps: readonly string[],
): { cap: string; resistor?: string; how: BleedSketch["how"] } | undefined {
  const ends = [netAt(guard, `${volume}.2`), netAt(guard, `${volume}.3`)];
  const resistors = namesOf(guard, "resistor");
  for (const cap of caps) {
    const legs = legNets(guard, cap);
    if (sameNets(legs, ends)) {
      const resistor = resistors.find((name) => sameNets(legNets(guard, name), ends));
      return resistor === undefined ? { cap, how: "alone" } : { cap, resistor, how: "parallel" };
    }
    const near = legs.find((net) => ends.includes(net));
    if (near === undefined) continue;
    const middle = legs[1 - legs.indexOf(near)]!;
    const far = ends[1 - ends.indexOf(near)]!;
    const resistor = resistors.find((name) => sameNets(legNets(guard, name), [middle, far]));
    if (resistor !== undefined) return { cap, resistor, how: "series" };
  }
  const touching = caps.find((cap) => legNets(guard, cap).some((net) => ends.includes(net)));
  return touching === undefined ? undefined : { cap: touching, how: "alone" };
}

export function readBleed(guard: Guard, volumes: readonly string[], caps: readonly string[]): BleedSketch | undefined {
  const bleeds = volumes.map((volume) => bleedAt(guard, volume, caps));
  const how = bleeds.find((bleed) => bleed)?.how;
  if (!how) return undefined;
  return { how, caps: bleeds.map((bleed) => bleed?.cap), resistors: bleeds.map((bleed) => bleed?.resistor) };
}
