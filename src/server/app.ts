// A route file exports `async function fooRoutes(app: App, context: RouteContext)`, declares zod schemas for what it takes and
// gives, and is added to ROUTES below. Work that takes more than a few milliseconds is a job of jobs.ts, run by `context.runJob`.
import helmet from "@fastify/helmet";
import fastifyStatic from "@fastify/static";
import Fastify from "fastify";
import { CONNECTION_TIMEOUT_MS, HEADERS_TIMEOUT_MS, MAX_BODY_BYTES, REQUEST_TIMEOUT_MS } from "../limits.ts";
import { tagTextAnswers } from "./caching.ts";
import { answerClientError } from "./client-errors.ts";
import { closeIdleWhenClosing } from "./closing.ts";
import { registerDocumentation } from "./documentation.ts";
import { type LogLevel, loggerOptions } from "./logging.ts";
import { registerMetrics } from "./metrics.ts";
import { PATHS } from "./paths.ts";
import { handleBadAddress, handleProblems } from "./problems.ts";
import { type Protection, registerProtection } from "./protection.ts";
import type { App, RouteContext } from "./route-context.ts";
import { benchRoutes } from "./routes/bench.ts";
import { catalogueRoutes } from "./routes/catalogue.ts";
import { compareRoutes } from "./routes/compare.ts";
import { diagnoseRoutes } from "./routes/diagnose.ts";
import { expandRoutes } from "./routes/expand.ts";
import { fitRoutes } from "./routes/fit.ts";
import { healthRoutes } from "./routes/health.ts";
import { impulseRoutes } from "./routes/impulse.ts";
import { linkRoutes } from "./routes/link.ts";
import { previewRoutes } from "./routes/preview.ts";
import { previewSetRoutes } from "./routes/previews.ts";
import { responseRoutes } from "./routes/response.ts";
import { scenarioRoutes } from "./routes/scenarios.ts";
import { searchRoutes } from "./routes/search.ts";
import { signalRoutes } from "./routes/signals.ts";
import { tableRoutes } from "./routes/table.ts";
import { toleranceRoutes } from "./routes/tolerance.ts";
import { registerUploads } from "./sound-upload.ts";
import { serializerCompiler, validatorCompiler } from "./validation.ts";
import { WorkerPool } from "./worker-pool.ts";

const ROUTES = [
  healthRoutes,
  scenarioRoutes,
  expandRoutes,
  linkRoutes,
  signalRoutes,
  catalogueRoutes,
  responseRoutes,
  previewRoutes,
  previewSetRoutes,
  impulseRoutes,
  benchRoutes,
  diagnoseRoutes,
  compareRoutes,
  toleranceRoutes,
  tableRoutes,
  fitRoutes,
  searchRoutes,
];

export interface AppOptions {
  readonly logLevel: LogLevel;
  readonly workers: number;
  readonly trustProxy: boolean;
  readonly protection?: Protection;
  /** The workers; as many as `workers` says unless given. */
  readonly pool?: WorkerPool;
  /** Where the log goes; standard output unless told otherwise. */
  readonly logStream?: NodeJS.WritableStream;
}

/** How often Node looks for connections over their time. */
const TIMEOUT_CHECK_MS = 5_000;

const CONTENT_SECURITY_POLICY = {
  useDefaults: false,
  directives: {
    "default-src": ["'none'"],
    "script-src": ["'self'"],
    "style-src": ["'self'"],
    "img-src": ["'self'", "data:", "blob:"],
    "media-src": ["'self'", "blob:"],
    "font-src": ["'self'"],
    "connect-src": ["'self'"],
    "manifest-src": ["'self'"],
    "base-uri": ["'none'"],
    "form-action": ["'self'"],
    "frame-ancestors": ["'none'"],
  },
};

/** The service, ready to listen or to be asked by `inject`. Closing it ends its workers. */
export async function buildApp(options: AppOptions): Promise<App> {
  const app = Fastify({
    logger: loggerOptions(options.logLevel, options.logStream),
    trustProxy: options.trustProxy,
    bodyLimit: MAX_BODY_BYTES,
    requestTimeout: REQUEST_TIMEOUT_MS,
    connectionTimeout: CONNECTION_TIMEOUT_MS,
    clientErrorHandler: answerClientError,
    frameworkErrors: handleBadAddress,
    http: { headersTimeout: HEADERS_TIMEOUT_MS, connectionsCheckingInterval: TIMEOUT_CHECK_MS },
    routerOptions: { maxParamLength: 20_000 },
  }) as unknown as App;
  app.setValidatorCompiler(validatorCompiler);
  app.setSerializerCompiler(serializerCompiler);
  handleProblems(app);
  await app.register(helmet, {
    contentSecurityPolicy: CONTENT_SECURITY_POLICY,
    // Set by whoever terminates TLS in front; over plain HTTP it is ignored.
    strictTransportSecurity: false,
  });
  const pool = options.pool ?? new WorkerPool(options.workers);
  app.addHook("onClose", () => pool.close());
  app.addHook("onSend", tagTextAnswers);
  closeIdleWhenClosing(app);
  registerMetrics(app, pool);
  await registerProtection(app, options.protection ?? {});
  await registerDocumentation(app);
  await registerUploads(app);
  const context: RouteContext = { runJob: pool.run };
  for (const routes of ROUTES) await app.register(routes, context);
  await app.register(fastifyStatic, {
    root: PATHS.publicFiles,
    cacheControl: true,
    maxAge: "1m",
    preCompressed: true,
  });
  return app;
}
