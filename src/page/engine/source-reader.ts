import "./zod-without-eval.ts";
import { expandBuild } from "../../build-file/expand.ts";
import { readBuild } from "../../build-file/read-build.ts";
import { type InputFault, PresolderError } from "../../errors.ts";
import { type BuildSource, type ReadResult, readingOf } from "../state/reading.ts";

/** What a build file that is not in the long form comes to, or why it is none. */
export type LongForm = { readonly source: BuildSource } | { readonly message: string };

function faultsOf(error: unknown): readonly InputFault[] {
  if (!(error instanceof PresolderError)) throw error;
  return error.faults.length > 0 ? error.faults : [{ path: "build", message: error.message }];
}

/** Reads a build file in the page itself, so that a fault shows while the field is still in view. */
export function readSource(source: BuildSource): ReadResult {
  try {
    return { reading: readingOf(source, readBuild(source)) };
  } catch (error) {
    return { faults: faultsOf(error) };
  }
}

export function longFormOf(input: unknown): LongForm {
  try {
    return { source: expandBuild(input) as BuildSource };
  } catch (error) {
    faultsOf(error);
    return { message: (error as PresolderError).message };
  }
}
