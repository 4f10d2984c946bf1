import type {
  FastifyBaseLogger,
  FastifyInstance,
  FastifyTypeProvider,
  RawReplyDefaultExpression,
  RawRequestDefaultExpression,
  RawServerDefault,
} from "fastify";
import type { z } from "zod";
import type { Answered } from "../../contract/wire.ts";
import type { RunJob } from "../work/worker-pool.ts";

/** Requests and answers have the types of the contract's schemas. */
interface ContractTypes extends FastifyTypeProvider {
  readonly validator: this["schema"] extends z.ZodType ? z.output<this["schema"]> : unknown;
  readonly serializer: this["schema"] extends z.ZodType ? Answered<this["schema"]> : unknown;
}

export type App = FastifyInstance<
  RawServerDefault,
  RawRequestDefaultExpression,
  RawReplyDefaultExpression,
  FastifyBaseLogger,
  ContractTypes
>;

/** What every route may use. */
export interface RouteContext {
  /** Runs a job of `jobs.ts` in a worker thread. */
  readonly runJob: RunJob;
  /** Has something kept for speed alone forgotten while memory is short. */
  readonly whenShortOfMemory?: (forget: () => void) => void;
}
