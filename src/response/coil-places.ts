import { partsOfKind } from "../build-file/parts-of-kind.ts";
import type { Build } from "../build-file/schema.ts";
import { DEFAULT_SCALE_METRES } from "../lengths.ts";
import { type CoilPlace, REFERENCE_COIL } from "../strings/comb.ts";
import { type StringSet, usualCoreMetres, usualStringSet } from "../strings/string-set.ts";
import type { CoilSource } from "./pickup-elements.ts";

/** Fractions of the scale from the bridge to a coil whose build file does not say; from memory, common practice. */
const USUAL_PLACES: readonly (readonly [RegExp, number])[] = [
  [/neck/i, 0.25],
  [/middle/i, 0.153],
  [/bridge/i, 0.065],
];

function usualDistance(pickup: string, scaleMetres: number): number {
  const fraction = USUAL_PLACES.find(([name]) => name.test(pickup))?.[1];
  return (fraction ?? REFERENCE_COIL.distanceMetres / DEFAULT_SCALE_METRES) * scaleMetres;
}

/** Where each coil sits, with its sign and output; places the build file leaves out are the usual ones for the pickup's name. */
export function coilPlaces(build: Build, sources: readonly CoilSource[]): CoilPlace[] {
  return sources.map(({ pickup, spec, emf }) => ({
    distanceMetres: spec.distance ?? usualDistance(pickup, build.strings.scale),
    apertureMetres: spec.aperture ?? REFERENCE_COIL.apertureMetres,
    sign: emf < 0 ? -1 : 1,
    output: spec.output,
    slantMetres: spec.slant ?? 0,
  }));
}

/** Pickups whose place on the string the build file leaves out, so that the usual one is taken. */
export function assumedPlaces(build: Build): string[] {
  return partsOfKind(build, "pickup")
    .filter(([, { coils }]) => Object.values(coils).some(({ distance }) => distance === undefined))
    .map(([name]) => name);
}

const FOURTH = 2 ** (5 / 12);

/** The build's strings: the usual tuning, in fourths below the sixth string, with the build's own gauges where it names them. */
export function stringSetOf(build: Build): StringSet {
  const { scale, gauges } = build.strings;
  const usual = usualStringSet(scale);
  if (!gauges) return usual;
  const lowest = usual.strings.at(-1)!;
  const strings = gauges.map((gaugeMetres, index) => {
    const below = Math.max(0, index - usual.strings.length + 1);
    const { openFrequencyHz, wound } = usual.strings[index] ?? lowest;
    const base = { openFrequencyHz: openFrequencyHz / FOURTH ** below, gaugeMetres, wound };
    return wound ? { ...base, coreMetres: usualCoreMetres(gaugeMetres) } : base;
  });
  return { scaleMetres: scale, strings };
}
