import { type Guard, namesOf, netAt } from "../guard.ts";
import type { Sketch } from "../sketch.ts";
import { legNets, sameNets } from "./legs.ts";
import { inPlanOrder, type Roles } from "./roles.ts";

/** Whether a resistor's hot end is anywhere near where a plan would put it. */
function isInPlace(guard: Guard, roles: Roles, part: string): boolean {
  const hot = legNets(guard, part).filter((net) => net !== roles.ground);
  const isNear = (name: string) => {
    const { kind } = guard.build.parts[name]!;
    return kind === "pickup" || kind === "switch" || roles.volumes.includes(name);
  };
  const acrossPot = [...roles.volumes, ...roles.tones].some((pot) =>
    sameNets(legNets(guard, part), [netAt(guard, `${pot}.1`), netAt(guard, `${pot}.3`)]),
  );
  return acrossPot || guard.table.lugs.some((lug) => isNear(lug.part) && hot.includes(netAt(guard, lug.name)));
}

const MAX_RESISTORS = 6;

/** Resistors that are of no treble bleed, each across whatever its legs are nearest to. */
export function readResistors(
  guard: Guard,
  roles: Roles,
  pickups: Readonly<Record<string, string>>,
  taken: readonly (string | undefined)[],
): Sketch["resistors"] {
  const free = namesOf(guard, "resistor").filter((name) => !taken.includes(name) && isInPlace(guard, roles, name));
  return inPlanOrder(free, "resistor")
    .slice(0, MAX_RESISTORS)
    .map((part) => {
      const hot = legNets(guard, part).filter((net) => net !== roles.ground);
      const pickup = Object.entries(pickups).find(([, name]) =>
        guard.table.lugs.some((lug) => lug.part === name && hot.includes(netAt(guard, lug.name))),
      );
      return { part, across: pickup ? { pickup: pickup[0] } : { pot: roles.volumes[0]! } };
    });
}
