import { readBuild } from "../build-file/read-build.ts";
import type { Build } from "../build-file/schema.ts";
import { PresolderError, refused } from "../errors.ts";

/** The same error with `build` at the head of its paths replaced by where this build stands in the request. */
function movedTo(path: string, error: PresolderError): PresolderError {
  const faults = error.faults.map((fault) => ({ ...fault, path: fault.path.replace(/^build(?=\.|$)/, path) }));
  return refused(error.code, faults);
}

/**
 * Reads a build that stands at `path` of the request.
 * @throws PresolderError BUILD_INVALID
 */
export function readBuildAt(path: string, input: unknown): Build {
  try {
    return readBuild(input);
  } catch (error) {
    throw error instanceof PresolderError && path !== "build" ? movedTo(path, error) : error;
  }
}
