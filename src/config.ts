import { availableParallelism } from "node:os";
import * as z from "zod";
import { MAX_REQUESTS_PER_MINUTE } from "./limits.ts";

const LOG_LEVELS = ["fatal", "error", "warn", "info", "debug", "trace", "silent"] as const;

const wholeNumber = (min: number, max: number) =>
  z
    .string()
    .regex(/^\d+$/, `expected a whole number from ${min} to ${max}`)
    .transform(Number)
    .pipe(z.number().min(min, `expected at least ${min}`).max(max, `expected at most ${max}`));

/** Two workers answer one listener at a time with one to spare; more than four would only crowd the machine's memory. */
const usualWorkers = Math.min(4, Math.max(2, availableParallelism()));

const environmentSchema = z.object({
  HOST: z.string().min(1).default("127.0.0.1"),
  PORT: wholeNumber(0, 65_535).default(4680),
  LOG_LEVEL: z.enum(LOG_LEVELS, `expected one of ${LOG_LEVELS.join(", ")}`).default("info"),
  WORKERS: wholeNumber(1, 64).default(usualWorkers),
  /** Of one client; 0 for no bound, where a proxy in front has its own. */
  REQUESTS_PER_MINUTE: wholeNumber(0, 1_000_000).default(MAX_REQUESTS_PER_MINUTE),
  /** Whether a proxy in front tells the caller's host and protocol; believed only when said so. */
  TRUST_PROXY: z
    .enum(["true", "false"], "expected true or false")
    .default("false")
    .transform((word) => word === "true"),
});

export interface Config {
  readonly host: string;
  readonly port: number;
  readonly logLevel: (typeof LOG_LEVELS)[number];
  readonly workers: number;
  readonly requestsPerMinute: number;
  readonly trustProxy: boolean;
}

/**
 * Reads the environment. An empty variable counts as absent.
 * @throws RangeError naming every variable at fault
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const given = Object.fromEntries(Object.entries(environment).filter(([, value]) => value !== ""));
  const result = environmentSchema.safeParse(given);
  if (!result.success) {
    const faults = result.error.issues.map((issue) => `${issue.path.join(".")}: ${issue.message}`);
    throw new RangeError(faults.join("; "));
  }
  const { HOST, PORT, LOG_LEVEL, WORKERS, REQUESTS_PER_MINUTE, TRUST_PROXY } = result.data;
  return {
    host: HOST,
    port: PORT,
    logLevel: LOG_LEVEL,
    workers: WORKERS,
    requestsPerMinute: REQUESTS_PER_MINUTE,
    trustProxy: TRUST_PROXY,
  };
}
