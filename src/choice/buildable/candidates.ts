import { PICKUP_TYPES } from "../../build-file/catalogue/pickup-types.ts";
import { type Drawer, drawerItemSchema } from "../../drawer/drawer-schema.ts";

/** Tracks that guitars have (common practice, no source), each plain and with a push-pull. */
const POTS = ["250k", "500k"].flatMap((resistance) =>
  [{}, { drives: "dpdt" }].map((drives) => ({ kind: "pot", resistance, taper: "audio", ...drives })),
);
const CAPS = ["10n", "22n", "47n", "100n", "680p", "1n"].map((capacitance) => ({ kind: "cap", capacitance }));
const SWITCHES = ["lever-5", "lever-3", "toggle-3", "dpdt"].map((type) => ({ kind: "switch", type }));

function pickups(): object[] {
  return PICKUP_TYPES.map(({ name, coils, conductors, coupling, metal }) => ({
    kind: "pickup",
    type: name,
    coils,
    ...(conductors === undefined ? {} : { conductors }),
    ...(coupling === undefined ? {} : { coupling }),
    ...(metal === undefined ? {} : { metal }),
  }));
}

/** One of every part that a plan could take, as it is usually sold. */
export function usualCandidates(): Drawer["items"] {
  const parts = [
    ...pickups(),
    ...POTS,
    ...CAPS,
    ...SWITCHES,
    { kind: "resistor", resistance: "150k" },
    { kind: "jack" },
  ];
  return parts.map((part) => drawerItemSchema.parse({ part }));
}
