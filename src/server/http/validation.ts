import type { FastifySchemaCompiler, FastifySerializerCompiler } from "fastify";
import type { z } from "zod";
import { readBuild } from "../../build-file/read-build.ts";
import type { Build } from "../../build-file/schema.ts";
import { faultsOf } from "../../build-file/zod-tools.ts";
import { PresolderError, refused } from "../../errors.ts";

export const refusal = refused;

/** Zod at the door; the faults keep the dotted paths of the request's fields. */
export const validatorCompiler: FastifySchemaCompiler<z.ZodType> =
  ({ schema, httpPart }) =>
  (data) => {
    const result = schema.safeParse(data);
    if (result.success) return { value: result.data };
    const part = httpPart === "querystring" ? "query" : (httpPart ?? "body");
    const faults = faultsOf(result.error).map(({ path, message }) => ({ path: path || part, message }));
    return { error: refused("REQUEST_INVALID", faults) };
  };

/** Answers are our own and their types checked; the tests hold them to the documented schemas. */
export const serializerCompiler: FastifySerializerCompiler<unknown> = () => JSON.stringify;

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
