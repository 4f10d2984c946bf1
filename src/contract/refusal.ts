import { readBuild } from "../build-file/read-build.ts";
import type { Build } from "../build-file/schema.ts";
import { type InputFault, PresolderError } from "../errors.ts";
import { MAX_DETAIL_CHARS } from "../limits.ts";

function listed(faults: readonly InputFault[]): string {
  return faults
    .map(({ path, message }) => `${path}: ${message}`)
    .join("; ")
    .slice(0, MAX_DETAIL_CHARS);
}

/** A refusal with every fault in its detail. */
export function refusal(code: PresolderError["code"], faults: readonly InputFault[]): PresolderError {
  return new PresolderError(code, listed(faults), faults);
}

/** The same error with `build` at the head of its paths replaced by where this build stands in the request. */
function movedTo(path: string, error: PresolderError): PresolderError {
  const faults = error.faults.map((fault) => ({ ...fault, path: fault.path.replace(/^build(?=\.|$)/, path) }));
  return refusal(error.code, faults);
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
