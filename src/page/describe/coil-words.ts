import type { PartSource } from "../state/reading.ts";

interface CoilSource {
  readonly magnet?: string;
}

export function coilsOf(part: PartSource): Readonly<Record<string, CoilSource>> {
  return (part.coils ?? {}) as Record<string, CoilSource>;
}

/** "slug coil (north)"; poles are told where they tell the coils apart. */
export function coilWords(part: PartSource, coil: string): string {
  const coils = coilsOf(part);
  const poles = Object.values(coils).map(({ magnet }) => magnet ?? "north");
  const tells = new Set(poles).size === poles.length && poles.length > 1;
  return `${coil} coil${tells ? ` (${coils[coil]?.magnet ?? "north"})` : ""}`;
}
