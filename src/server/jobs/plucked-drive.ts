import type { DriveOf } from "../../choice/buildable/hearing.ts";
import { driveOfPartials } from "../../choice/drive.ts";
import { expectPickups } from "../../render/feed.ts";
import { pluckedPartials } from "../../render/plucked-partials.ts";
import { coilPlaces, stringSetOf } from "../../response/coil-places.ts";

/**
 * The usual phrase on a guard's own strings, each coil in its place.
 * @throws PresolderError SOUND_UNUSABLE for a harness without pickups
 */
export const pluckedDrive: DriveOf = (build, sources) => {
  expectPickups(sources);
  const partials = pluckedPartials(coilPlaces(build, sources), stringSetOf(build), {});
  return driveOfPartials("the usual phrase", partials, sources.length);
};
