import closeWithGrace from "close-with-grace";
import { readConfig } from "../config.ts";
import { buildApp, buildRehearsal } from "./app.ts";
import { usualMemoryBytes } from "./care/protection.ts";
import type { App } from "./routes/route-context.ts";
import { warmUp } from "./work/warm-up.ts";
import { WorkerPool } from "./work/worker-pool.ts";

const GRACE_MS = 10_000;

function fail(message: string): never {
  process.stderr.write(`${message}\n`);
  process.exit(1);
}

function readConfigOrFail() {
  try {
    return readConfig(process.env);
  } catch (error) {
    return fail(`Presolder cannot start: ${(error as Error).message}`);
  }
}

const config = readConfigOrFail();
const pool = new WorkerPool(config.workers);
let app: App | undefined;

closeWithGrace({ delay: GRACE_MS, logger: undefined }, async ({ err }) => {
  if (err) app?.log.error({ err }, "closing after an error");
  await (app ?? pool).close();
});

const rehearsal = await buildRehearsal(pool);
await warmUp(rehearsal);
await rehearsal.close();

const { requestsPerMinute } = config;
app = await buildApp({ ...config, pool, protection: { requestsPerMinute, memoryBytes: usualMemoryBytes() } });

try {
  await app.listen({ host: config.host, port: config.port });
} catch (error) {
  const { code, message } = error as NodeJS.ErrnoException;
  await app.close();
  const reason =
    code === "EADDRINUSE"
      ? `port ${config.port} on ${config.host} is in use; set PORT to another, as in PORT=4681 npm start`
      : message;
  fail(`Presolder cannot start: ${reason}`);
}

const address = app.server.address();
const port = typeof address === "object" && address ? address.port : config.port;
const host = config.host.includes(":") ? `[${config.host}]` : config.host;
process.stdout.write(`Presolder listens on http://${host}:${port}/\n`);
