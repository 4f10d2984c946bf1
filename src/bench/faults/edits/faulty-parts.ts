import type { Coil, Part, PartOf, Pickup, Pot } from "../../../build-file/schema.ts";

/** What is left of a shorted coil: the format has no coil without resistance and inductance. */
const SHORTED_COIL = { resistance: 1e-3, inductance: 1e-9, capacitance: 0, output: 0 };
/** A coil through which nothing flows and that takes up nothing. */
const DEAD_COIL = { resistance: 1e12, inductance: 1, capacitance: 0, output: 0 };
/** An open capacitor: the format has none without capacitance. */
const OPEN_CAP_FARADS = 1e-18;

/** A coil that is not there, wound and magnetised as the one it stands for. */
export function deadCoil({ winding, magnet }: Coil): Coil {
  return { ...DEAD_COIL, winding, magnet };
}

/** The pickup with one winding shorted inside; a shorted coil couples to nothing. */
export function withShortedCoil({ coupling: _, ...pickup }: Pickup, coil: string): Pickup {
  const { loss: __, ...spec } = pickup.coils[coil]!;
  return { ...pickup, coils: { ...pickup.coils, [coil]: { ...spec, ...SHORTED_COIL } } };
}

/** The pickup with one winding of another resistance, which tells nothing sure about its inductance. */
export function withCoilResistance(pickup: Pickup, coil: string, factor: number): Pickup {
  const spec = pickup.coils[coil]!;
  return { ...pickup, coils: { ...pickup.coils, [coil]: { ...spec, resistance: spec.resistance * factor } } };
}

/** A track of another value, which is what it has and not what is printed on it. */
function scaledTrack<Track extends { resistance: number; measured?: number | undefined }>(
  track: Track,
  factor: number,
): Track {
  const { measured, ...rest } = track;
  return { ...rest, resistance: (measured ?? track.resistance) * factor } as Track;
}

/** The pot with one track, 0 its own and 1 its second gang's, or the resistor, of another value; any other part as it is. */
export function withResistance(part: Part, gang: number, factor: number): Part {
  if (part.kind === "resistor") return { ...part, resistance: part.resistance * factor };
  if (part.kind !== "pot") return part;
  if (gang === 0) return scaledTrack(part, factor);
  return { ...part, gangs: part.gangs?.map((track) => scaledTrack(track, factor)) };
}

/** The capacitor with another value; a factor of 0 is an open one. */
export function withCapacitance(cap: PartOf<"cap">, factor: number): PartOf<"cap"> {
  return { ...cap, capacitance: Math.max(OPEN_CAP_FARADS, cap.capacitance * factor) };
}

/** The pot with a track of another taper, as such tracks usually are. */
export function withTaper({ midpoint: _, ...pot }: Pot, taper: "linear" | "audio"): Pot {
  return { ...pot, taper };
}
