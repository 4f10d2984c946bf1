import type { Pickup } from "./schema.ts";

/** Lugs of a pot's tracks: bottom, wiper, top; then those of a second gang. */
const TRACK_LUGS = [
  ["1", "2", "3"],
  ["b1", "b2", "b3"],
] as const;

type Track = readonly [bottom: string, wiper: string, top: string];

/** The names of a track's lugs within its pot. @param gang 0, or 1 for the second track on the shaft */
export function localTrackLugs(gang: number): Track {
  return TRACK_LUGS[gang === 0 ? 0 : 1];
}

/** "volume.1", "volume.2", "volume.3". @param gang 0, or 1 for the second track on the shaft */
export function trackLugs(pot: string, gang = 0): Track {
  const [bottom, wiper, top] = localTrackLugs(gang);
  return [`${pot}.${bottom}`, `${pot}.${wiper}`, `${pot}.${top}`];
}

/** What settings call the switch on a pot's shaft. */
export function shaftSwitch(pot: string): string {
  return `${pot}.s`;
}

/** A lug of a switch by what settings call the switch: "lever.A0", "tone2.s.A0". */
export function contactLug(control: string, local: string): string {
  return `${control}.${local}`;
}

/** Whether each coil brings leads of its own out; else the pickup as a whole has `hot` and `ground`. */
export function hasCoilLeads(pickup: { readonly coils: object; readonly conductors?: Pickup["conductors"] }): boolean {
  return Object.keys(pickup.coils).length === 2 && pickup.conductors !== 2;
}

/** The names of a coil's own leads within its pickup: "slug.start", "slug.finish". */
export function localCoilLeads(coil: string): readonly [start: string, finish: string] {
  return [`${coil}.start`, `${coil}.finish`];
}

/** The leads at which a coil can be reached: its own, start first, else the pickup's, hot first. */
export function leadsOfCoil(name: string, pickup: Pickup, coil: string): readonly [string, string] {
  const [first, second] = hasCoilLeads(pickup) ? localCoilLeads(coil) : ["hot", "ground"];
  return [`${name}.${first}`, `${name}.${second}`];
}
