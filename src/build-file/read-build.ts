import { parseLongForm } from "./build-file.ts";
import { expandBuild, hasPlan } from "./expand.ts";
import type { Build } from "./schema.ts";

/**
 * Reads any build file, long form or plan.
 * @throws PresolderError BUILD_INVALID with one fault for every field at fault.
 */
export function readBuild(input: unknown): Build {
  return parseLongForm(hasPlan(input) ? expandBuild(input) : input);
}
