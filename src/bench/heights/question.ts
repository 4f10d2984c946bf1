import { suggestion } from "../../build-file/nearest.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import type { Build } from "../../build-file/schema.ts";
import { Controls, parseSettings, type Settings } from "../../build-file/settings.ts";
import { type InputFault, refused } from "../../errors.ts";
import { stringSetOf } from "../../response/coil-places.ts";
import type { Gaps } from "./gaps.ts";
import { mountedPickup } from "./mounted-pickup.ts";
import type { HeightsBody, PickupBody } from "./request-shape.ts";
import type { MountedPickup } from "./screws.ts";

/** Levels of all strings in one setting at one height of the pickups. */
export interface LevelRow {
  readonly settings: Settings;
  /** Of every pickup of the question. */
  readonly gaps: readonly Gaps[];
  readonly levelsDb: readonly number[];
}

export interface HeightsQuestion {
  readonly build: Build;
  readonly pickups: readonly MountedPickup[];
  readonly rows: readonly LevelRow[];
  readonly withinDb: number;
  readonly reference: Settings | null;
  readonly withStrings: boolean;
}

function measured(name: string, given: PickupBody): MountedPickup {
  const { bass, treble, limits, magnet } = given;
  return mountedPickup(name, {
    gaps: { bassMetres: bass.gap, trebleMetres: treble.gap },
    pitchMetres: { bass: bass.pitch, treble: treble.pitch },
    minMetres: limits?.min,
    maxMetres: limits?.max,
    screwsApartMetres: given.screwsApart,
    stringsApartMetres: given.stringsApart,
    clockwiseLowers: given.clockwiseLowers,
    magnetDiameterMetres: magnet?.diameter,
    magnetLengthMetres: magnet?.length,
    pullMetres: given.pullBelow,
  });
}

type HeightSet = Exclude<HeightsBody["levels"][number]["heights"], string>;

/** Names that nothing goes by, with the nearest that something does. */
function unknownNames(path: string, names: readonly string[], known: readonly string[], what: string): InputFault[] {
  return names
    .filter((name) => !known.includes(name))
    .map((name) => ({ path: `${path}.${name}`, message: `there is no ${what} "${name}"${suggestion(name, known)}` }));
}

function faultsIn(build: Build, { pickups, heights, levels }: HeightsBody): InputFault[] {
  const inBuild = partsOfKind(build, "pickup").map(([name]) => name);
  const named = Object.keys(pickups);
  const count = stringSetOf(build).strings.length;
  const ofRows = levels.flatMap(({ heights: own, strings }, index): InputFault[] => {
    const path = `levels.${index}`;
    const faults =
      typeof own === "string"
        ? Object.hasOwn(heights, own)
          ? []
          : [{ path: `${path}.heights`, message: `there is no set "${own}"${suggestion(own, Object.keys(heights))}` }]
        : unknownNames(`${path}.heights`, Object.keys(own), named, "pickup with screws");
    if (strings.length === count) return faults;
    return [
      ...faults,
      { path: `${path}.strings`, message: `has ${strings.length} levels; expected ${count}, one a string` },
    ];
  });
  return [
    ...unknownNames("pickups", named, inBuild, "pickup"),
    ...Object.entries(heights).flatMap(([set, own]) =>
      unknownNames(`heights.${set}`, Object.keys(own), named, "pickup with screws"),
    ),
    ...ofRows,
  ];
}

function gapsIn(set: HeightSet, pickups: readonly MountedPickup[]): Gaps[] {
  return pickups.map(({ name, gaps }) => {
    const own = Object.hasOwn(set, name) ? set[name] : undefined;
    return own ? { bassMetres: own.bass, trebleMetres: own.treble } : gaps;
  });
}

/**
 * What a request asks, with the build it asks of.
 * @throws PresolderError REQUEST_INVALID or SETTINGS_INVALID, naming every field at fault
 */
export function readHeights(build: Build, body: HeightsBody): HeightsQuestion {
  const faults = faultsIn(build, body);
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
  const controls = new Controls(build);
  const pickups = Object.entries(body.pickups).map(([name, given]) => measured(name, given));
  const rows = body.levels.map(({ heights, settings, strings }, index) => ({
    settings: parseSettings(controls, settings, `levels.${index}.settings`),
    gaps: gapsIn(typeof heights === "string" ? body.heights[heights]! : heights, pickups),
    levelsDb: strings,
  }));
  const { within, reference, matter } = body.target;
  return {
    build,
    pickups,
    rows,
    withinDb: within,
    reference: reference ? parseSettings(controls, reference, "target.reference") : null,
    withStrings: matter === "both",
  };
}
