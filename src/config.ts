import { isIPv4, isIPv6 } from "node:net";
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

/** None, a number of proxies one behind the other, or their addresses. */
export type TrustedProxies = false | number | readonly string[];

const MAX_PROXIES = 10;
const EXPECTED_PROXIES = `expected false, a number of proxies from 1 to ${MAX_PROXIES}, or their addresses as in 10.0.0.1,192.168.0.0/16; anybody else's word would be made up`;

function isNetwork(text: string): boolean {
  const [address = "", bits, ...rest] = text.split("/");
  const most = isIPv4(address) ? 32 : isIPv6(address) ? 128 : -1;
  return most > 0 && rest.length === 0 && (bits === undefined || (/^\d+$/.test(bits) && Number(bits) <= most));
}

function readTrusted(text: string, context: z.RefinementCtx): TrustedProxies {
  if (text === "false") return false;
  if (/^\d+$/.test(text) && Number(text) >= 1 && Number(text) <= MAX_PROXIES) return Number(text);
  const networks = text.split(",").map((each) => each.trim());
  if (networks.every(isNetwork)) return networks;
  context.addIssue({ code: "custom", message: EXPECTED_PROXIES });
  return z.NEVER;
}

function readPublicUrl(text: string, context: z.RefinementCtx): string {
  const url = URL.canParse(text) ? new URL(text) : undefined;
  const isPlain = url && /^https?:$/.test(url.protocol) && !url.username && !url.search && !url.hash;
  if (isPlain && url.pathname === "/") return url.origin;
  context.addIssue({ code: "custom", message: "expected where the service is reached, as in https://guards.example" });
  return z.NEVER;
}

/** Two workers answer one listener at a time with one to spare; more than four would only crowd the machine's memory. */
const usualWorkers = Math.min(4, Math.max(2, availableParallelism()));

const environmentSchema = z.object({
  HOST: z.string().min(1).default("127.0.0.1"),
  PORT: wholeNumber(0, 65_535).default(4680),
  LOG_LEVEL: z.enum(LOG_LEVELS, `expected one of ${LOG_LEVELS.join(", ")}`).default("info"),
  WORKERS: wholeNumber(1, 64).default(usualWorkers),
  /** Of one client; 0 for no bound, where a proxy in front has its own. */
  REQUESTS_PER_MINUTE: wholeNumber(0, 1_000_000).default(MAX_REQUESTS_PER_MINUTE),
  /** Which proxies in front may tell the caller's address, host and protocol. */
  TRUST_PROXY: z.string().default("false").transform(readTrusted),
  /** Where links lead; absent for where the caller reached the service. */
  PUBLIC_URL: z.string().transform(readPublicUrl).optional(),
});

export interface Config {
  readonly host: string;
  readonly port: number;
  readonly logLevel: (typeof LOG_LEVELS)[number];
  readonly workers: number;
  readonly requestsPerMinute: number;
  readonly trustProxy: TrustedProxies;
  readonly publicUrl: string | undefined;
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
  const { HOST, PORT, LOG_LEVEL, WORKERS, REQUESTS_PER_MINUTE, TRUST_PROXY, PUBLIC_URL } = result.data;
  return {
    host: HOST,
    port: PORT,
    logLevel: LOG_LEVEL,
    workers: WORKERS,
    requestsPerMinute: REQUESTS_PER_MINUTE,
    trustProxy: TRUST_PROXY,
    publicUrl: PUBLIC_URL,
  };
}
