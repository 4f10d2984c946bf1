import { type Drive, driveOfPartials } from "../../choice/drive.ts";
import type { Guard } from "../../choice/guard.ts";
import { expectPickups } from "../../render/feed.ts";
import { pluckedPartials } from "../../render/plucked-partials.ts";
import { coilPlaces, stringSetOf } from "../../response/coil-places.ts";

/** The usual phrase, plucked, each coil of a guard at its own place. @throws PresolderError SOUND_UNUSABLE for a harness without pickups */
export function pluckedDrive({ build, sources }: Guard): Drive {
  expectPickups(sources);
  return driveOfPartials("phrase", pluckedPartials(coilPlaces(build, sources), stringSetOf(build), {}), sources.length);
}
