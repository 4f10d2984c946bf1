import type { Build } from "../../build-file/schema.ts";
import type { Settings } from "../../build-file/settings.ts";
import { amplitudeFromDecibels } from "../../decibels.ts";
import { turnsScale } from "../hum.ts";
import type { CoilSource } from "../pickup-elements.ts";
import { type Complex, magnitudeOf, type PositionProbe } from "./position-probe.ts";

/** A coil that reaches the jack in a setting. */
export interface SoundingCoil {
  /** Its index among the build's sources. */
  readonly source: number;
  readonly pickup: string;
  readonly coil: string;
  /** Its signal at the jack: EMF with its sign × transfer function. */
  readonly signal: Complex;
  /** Its hum at the jack, in the hum of one reference coil. */
  readonly hum: Complex;
}

/** Below this the strongest coil counts as silence: 50 dB under its EMF, what leaks through a switch's or a lead's capacitance. */
export const SILENT_BELOW = amplitudeFromDecibels(-50);
/** A coil this far under the strongest one only leaks in: 26 dB. */
const LEAKS_BELOW = 0.05;

const scaled = ({ re, im }: Complex, factor: number): Complex => ({ re: re * factor, im: im * factor });

/** Volumes and tones at 10, where the switch alone decides what is heard; other pots as they stand. */
export function fullControls(build: Build, settings: Settings): Settings {
  const dials = Object.entries(build.parts).flatMap(([name, part]) => {
    if (part.kind !== "pot") return [];
    const staysPut = part.role === "blend" || part.role === "other";
    return [[name, staysPut ? (settings.dials[name] ?? 10) : 10] as const];
  });
  return { ...settings, dials: Object.fromEntries(dials) };
}

function reaching(sources: readonly CoilSource[], transfers: readonly Complex[]): SoundingCoil[] {
  const levels = transfers.map(magnitudeOf);
  const strongest = Math.max(0, ...levels);
  if (strongest < SILENT_BELOW) return [];
  return sources.flatMap(({ pickup, coil, emf, humSign, spec }, source) => {
    if (levels[source]! < LEAKS_BELOW * strongest) return [];
    const transfer = transfers[source]!;
    return [{ source, pickup, coil, signal: scaled(transfer, emf), hum: scaled(transfer, humSign * turnsScale(spec)) }];
  });
}

/** The coils that reach the jack, from the bridge towards the neck where their places are known, else in the file's order. */
export function soundingCoils(probe: PositionProbe, settings: Settings): SoundingCoil[] {
  const coils = reaching(probe.sources, probe.transfersIn(settings));
  const distance = ({ source }: SoundingCoil) => probe.sources[source]!.spec.distance;
  const placed = coils.every((coil) => distance(coil) !== undefined);
  return placed ? coils.sort((a, b) => distance(a)! - distance(b)!) : coils;
}

export function sumOf(values: readonly Complex[]): Complex {
  return values.reduce((sum, { re, im }) => ({ re: sum.re + re, im: sum.im + im }), { re: 0, im: 0 });
}

/** What is left of the values after they meet, as a fraction of what they would make if all helped each other; 1 for none. */
export function netFraction(values: readonly Complex[]): number {
  const total = values.reduce((sum, value) => sum + magnitudeOf(value), 0);
  return total > 0 ? magnitudeOf(sumOf(values)) / total : 1;
}

/** Whether two signals help each other. */
export function agree(a: Complex, b: Complex): boolean {
  return a.re * b.re + a.im * b.im >= 0;
}
