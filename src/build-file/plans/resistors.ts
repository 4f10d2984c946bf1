import type { Draft } from "./draft.ts";
import { beside, type Place } from "./places.ts";
import { knownName } from "./plan-fault.ts";
import type { Tap } from "./plan-pickups.ts";
import type { Plan } from "./plan-schema.ts";

/** Resistors across a pot's outer lugs, which keeps its taper, or from a pickup's hot side to ground. */
export function addResistors(
  draft: Draft,
  plan: Plan,
  taps: ReadonlyMap<string, Tap>,
  pots: readonly string[],
  ground: string,
): void {
  for (const [index, { across, resistance }] of plan.resistors.entries()) {
    knownName(`resistors.${index}.across`, across, [...pots, ...taps.keys()], "pot or pickup");
    const name = plan.resistors.length === 1 ? "resistor" : `resistor${index + 1}`;
    const at = draft.parts[across]!.place as Place;
    const label = `Resistor across ${across}`;
    draft.part(name, { kind: "resistor", label, resistance, place: beside(at, { x: -0.012, y: 0.006 }) });
    const tap = taps.get(across);
    draft.join(`${name}.a`, tap ? tap.hot : `${across}.3`, "leg");
    draft.join(`${name}.b`, tap ? ground : `${across}.1`, "leg");
  }
}
