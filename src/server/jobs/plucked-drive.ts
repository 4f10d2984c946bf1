import type { DriveOf } from "../../choice/buildable/hearing.ts";
import { driveOfPartials } from "../../choice/drive.ts";
import { pluckedPartials } from "../../render/plucked-partials.ts";

/** The usual phrase on a guard's own strings, each coil in its place. */
export const pluckedDrive: DriveOf = (build, sources) =>
  driveOfPartials("the usual phrase", pluckedPartials(build, sources, {}), sources.length);
