import type { Build } from "../../../src/build-file/schema.ts";
import { driveOfPartials } from "../../../src/choice/drive.ts";
import { pluckedPartials } from "../../../src/render/plucked-partials.ts";
import { coilPlaces, stringSetOf } from "../../../src/response/coil-places.ts";
import type { CoilSource } from "../../../src/response/pickup-elements.ts";

export const driveOf = (build: Build, sources: readonly CoilSource[]) =>
  driveOfPartials("strings", pluckedPartials(coilPlaces(build, sources), stringSetOf(build), {}), sources.length);
