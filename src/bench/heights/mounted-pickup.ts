import { millimetresText } from "../../lengths.ts";
import type { Gaps } from "./gaps.ts";
import type { MountedPickup } from "./screws.ts";

/** A pickup as a person measured it; what is left out is taken as usual, and said so. */
export interface MeasuredPickup {
  readonly gaps: Gaps;
  readonly pitchMetres: MountedPickup["pitchMetres"];
  readonly minMetres?: number | undefined;
  readonly maxMetres?: number | undefined;
  readonly screwsApartMetres?: number | undefined;
  readonly stringsApartMetres?: number | undefined;
  readonly clockwiseLowers?: boolean | undefined;
  readonly magnetDiameterMetres?: number | undefined;
  readonly magnetLengthMetres?: number | undefined;
  readonly pullMetres?: number | undefined;
}

/** All common practice, no source. The two spacings are those of a pickup of six strings, at its screws and over its poles. */
const USUAL = {
  minMetres: 1.5e-3,
  maxMetres: 6e-3,
  screwsApartMetres: 76e-3,
  stringsApartMetres: 50e-3,
  magnetDiameterMetres: 4.8e-3,
  magnetLengthMetres: 17e-3,
  pullMetres: 2e-3,
};

/** The usual bounds give way to a bound of the person's own beyond them. */
function limitsOf({ minMetres, maxMetres }: MeasuredPickup): MountedPickup["limits"] {
  return {
    minMetres: minMetres ?? Math.min(USUAL.minMetres, maxMetres ?? USUAL.minMetres),
    maxMetres: maxMetres ?? Math.max(USUAL.maxMetres, minMetres ?? USUAL.maxMetres),
  };
}

function assumedWords(name: string, given: MeasuredPickup): string[] {
  const { minMetres, maxMetres } = limitsOf(given);
  const limits = given.minMetres === undefined || given.maxMetres === undefined;
  const spread = given.screwsApartMetres === undefined || given.stringsApartMetres === undefined;
  return [
    limits &&
      `${name}: a gap of at least ${millimetresText(minMetres)} and at most ${millimetresText(maxMetres)}, pressed at the last fret`,
    spread &&
      `${name}: screws ${millimetresText(given.screwsApartMetres ?? USUAL.screwsApartMetres)} apart, the outer strings ${millimetresText(given.stringsApartMetres ?? USUAL.stringsApartMetres)}`,
    given.clockwiseLowers === undefined &&
      `${name}: a screw turned clockwise raises the pickup, as where it hangs from the guard on springs or tubing`,
  ].filter((text) => text !== false);
}

/** @param name as the build file calls it */
export function mountedPickup(name: string, given: MeasuredPickup): MountedPickup {
  const of = (key: keyof typeof USUAL) => given[key] ?? USUAL[key];
  return {
    name,
    gaps: given.gaps,
    pitchMetres: given.pitchMetres,
    limits: limitsOf(given),
    lever: of("screwsApartMetres") / of("stringsApartMetres"),
    clockwiseLowers: given.clockwiseLowers ?? false,
    magnet: { radiusMetres: of("magnetDiameterMetres") / 2, lengthMetres: of("magnetLengthMetres") },
    pullMetres: of("pullMetres"),
    assumed: assumedWords(name, given).map((text) => `${text} (common practice, no source)`),
  };
}
