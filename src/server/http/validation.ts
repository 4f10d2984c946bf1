import type { FastifySchemaCompiler, FastifySerializerCompiler } from "fastify";
import type { z } from "zod";
import { faultsOf, parsed } from "../../build-file/zod-tools.ts";
import { refused } from "../../errors.ts";

/** Zod at the door; the faults keep the dotted paths of the request's fields. */
export const validatorCompiler: FastifySchemaCompiler<z.ZodType> =
  ({ schema, httpPart }) =>
  (data) => {
    const result = parsed(schema, data);
    if (result.success) return { value: result.data };
    const part = httpPart === "querystring" ? "query" : (httpPart ?? "body");
    const faults = faultsOf(result.error).map(({ path, message }) => ({ path: path || part, message }));
    return { error: refused("REQUEST_INVALID", faults) };
  };

/** Answers are our own and their types checked; the tests hold them to the documented schemas. */
export const serializerCompiler: FastifySerializerCompiler<unknown> = () => JSON.stringify;
