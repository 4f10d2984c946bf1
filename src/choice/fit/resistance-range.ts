/**
 * What a DC resistance alone says about a pickup: a range, never a point. Turns, wire gauge and core decide the inductance, and a
 * meter sees none of them.
 */
export interface PickupRange {
  readonly resistance: number;
  readonly inductance: Range;
  readonly capacitance: Range;
  readonly loss: Range;
  readonly basis: string;
}

export interface Range {
  readonly low: number;
  readonly high: number;
}

export const RANGE_TYPES = ["single", "wide-single", "humbucker"] as const;
export type RangeType = (typeof RANGE_TYPES)[number];

/**
 * Resistance and inductance of a usual pickup of each type. 2.8 H and 4.7 H are R. Stanley's typical values for single coils
 * with rod magnets and for humbuckers; the resistances and the wide single coil are common practice, no source.
 */
const TYPICAL: Readonly<Record<RangeType, { ohms: number; henries: number }>> = {
  single: { ohms: 6500, henries: 2.8 },
  "wide-single": { ohms: 8000, henries: 6 },
  humbucker: { ohms: 8000, henries: 4.7 },
};
/** The same turns in the next finer wire (AWG 43 for 42) have this many times the resistance: the ratio of the wires' areas. */
const GAUGE_RATIO = 1.261;
/** Cores and surroundings make 40–50 % of the inductance (R. Stanley), so other magnets and screws move it by about a quarter. */
const CORE_SPREAD = 0.25;
/** Most pickups lie between 1 and 10 H, and their windings between 80 and 200 pF (H. Lemme, Pickup-Geheimnisse: Beschaltung). */
const MOST_PICKUPS_HENRIES = { low: 1, high: 10 };
const WINDING_FARADS = { low: 80e-12, high: 200e-12 };
/** Common practice, no source: bare rods lose little, covers and thick screws much. */
const LOSS_OHMS = { low: 200e3, high: 3e6 };

/**
 * The range of a pickup of a known type of which only the DC resistance is known. In one wire, turns go as resistance and
 * inductance as turns squared.
 */
export function rangeFromResistance(type: RangeType, resistanceOhms: number): PickupRange {
  const { ohms, henries } = TYPICAL[type];
  const turns = resistanceOhms / ohms;
  const low = henries * (1 - CORE_SPREAD) * (turns / GAUGE_RATIO) ** 2;
  const high = henries * (1 + CORE_SPREAD) * (turns * GAUGE_RATIO) ** 2;
  const { low: least, high: most } = MOST_PICKUPS_HENRIES;
  // Outside of what most pickups have, the resistance itself says that this is no usual one, and the range stays as computed.
  const inductance = { low: high > least ? Math.max(low, least) : low, high: low < most ? Math.min(high, most) : high };
  return {
    resistance: resistanceOhms,
    inductance,
    capacitance: WINDING_FARADS,
    loss: LOSS_OHMS,
    basis:
      "Scaled by the square of the turns from a usual pickup of the type; one wire gauge either way and a quarter for the core," +
      " within the 1–10 H of most pickups. A resonance with two known capacitors would narrow it to a few percent.",
  };
}
