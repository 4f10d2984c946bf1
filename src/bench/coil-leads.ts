import type { Pickup } from "../build-file/schema.ts";

/** Whether each coil brings out a start and a finish; else one pair, hot and ground, serves the whole pickup. */
export function hasCoilLeads({ coils, conductors }: Pickup): boolean {
  return Object.keys(coils).length > 1 && conductors !== 2;
}

/** The two lugs to solder for a coil: hot and ground of its pickup, or a start and finish of its own. */
export function leadsOfCoil(name: string, pickup: Pickup, coil: string): [string, string] {
  return hasCoilLeads(pickup) ? [`${name}.${coil}.start`, `${name}.${coil}.finish`] : [`${name}.hot`, `${name}.ground`];
}
