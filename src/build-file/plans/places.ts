import { DEFAULT_SCALE_METRES } from "../../lengths.ts";
import type { Layout } from "./layouts.ts";

export interface Place {
  readonly x: number;
  readonly y: number;
}

/** Pickup distances from the bridge and where the rest sits, in metres, for the usual scale; all from memory, no source. */
export const THREE_PICKUPS = { bridge: 0.041, middle: 0.099, neck: 0.162 };
export const TWO_PICKUPS = { bridge: 0.045, neck: 0.156 };

/** A single coil at the bridge of three sits aslant, its treble end nearer the bridge (from memory). */
export const BRIDGE_SLANT = "12mm";

const LEVER_GUARD: Readonly<Record<string, Place>> = {
  selector: { x: 0.115, y: 0.085 },
  volume: { x: 0.055, y: 0.075 },
  tone: { x: 0.01, y: 0.095 },
  tone1: { x: 0.01, y: 0.095 },
  tone2: { x: -0.035, y: 0.105 },
  jack: { x: -0.085, y: 0.105 },
  claw: { x: -0.11, y: 0 },
  shield: { x: 0.08, y: 0.055 },
  star: { x: 0.035, y: 0.055 },
};

const ELSEWHERE: Place = { x: 0.035, y: 0.055 };

const TWO_VOLUME_BODY: Readonly<Record<string, Place>> = {
  ...LEVER_GUARD,
  selector: { x: 0.2, y: -0.1 },
  volume1: { x: 0.03, y: 0.075 },
  volume2: { x: -0.02, y: 0.08 },
  tone1: { x: 0.015, y: 0.115 },
  tone2: { x: -0.035, y: 0.12 },
  tone: { x: 0.0, y: 0.115 },
  jack: { x: -0.09, y: 0.14 },
  shield: { x: 0.05, y: 0.06 },
};

const TOGGLE_BODY: Readonly<Record<string, Place>> = { ...LEVER_GUARD, selector: { x: 0.2, y: -0.09 } };

/** Distance of a pickup's middle from the bridge, metres, for a scale length. */
export function pickupDistance(layout: Layout, pickup: string, scaleMetres: number): number {
  const ownTable: Readonly<Record<string, number>> = layout.pickups.length === 3 ? THREE_PICKUPS : TWO_PICKUPS;
  const distances: Readonly<Record<string, number>> = { ...THREE_PICKUPS, ...ownTable };
  return rounded(((distances[pickup] ?? TWO_PICKUPS.bridge) * scaleMetres) / DEFAULT_SCALE_METRES);
}

export function placeOf(layout: Layout, role: string): Place {
  const table = layout.volumes === 2 ? TWO_VOLUME_BODY : layout.selector === "toggle-3" ? TOGGLE_BODY : LEVER_GUARD;
  return table[role] ?? ELSEWHERE;
}

/** A small part on or beside another. */
export function beside(place: Place, offset: Place): Place {
  return { x: rounded(place.x + offset.x), y: rounded(place.y + offset.y) };
}

/** To a tenth of a millimetre, so that the long form holds no digits of arithmetic. */
export function rounded(metres: number): number {
  return Math.round(metres * 1e4) / 1e4;
}

export function millimetres(metres: number): string {
  return `${Math.round(metres * 1e4) / 10}mm`;
}
