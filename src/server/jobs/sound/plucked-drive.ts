import { type Drive, driveOfPartials } from "../../../choice/drive.ts";
import type { Guard } from "../../../choice/guard.ts";
import { PLUCKED_PHRASE, pluckedPartials } from "../../../render/plucked-partials.ts";
import { coilPlaces, stringSetOf } from "../../../response/coil-places.ts";

/** The usual phrase, plucked, each coil of a guard at its own place. */
export function pluckedDrive({ build, sources }: Guard): Drive {
  const partials = pluckedPartials(coilPlaces(build, sources), stringSetOf(build), {});
  return driveOfPartials(PLUCKED_PHRASE, partials, sources.length);
}
