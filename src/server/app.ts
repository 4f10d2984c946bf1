// A route file exports `async function fooRoutes(app: App, context: RouteContext)`, takes its schemas from src/contract and is added
// to ROUTES below. Work that takes more than a few milliseconds is a job of jobs.ts, run by `context.runJob`; its gate is named in
// the route's `config`.
import helmet from "@fastify/helmet";
import fastifyStatic from "@fastify/static";
import Fastify from "fastify";
import type { TrustedProxies } from "../config.ts";
import { CONNECTION_TIMEOUT_MS, HEADERS_TIMEOUT_MS, MAX_BODY_BYTES, REQUEST_TIMEOUT_MS } from "../limits.ts";
import { type LogLevel, loggerOptions } from "./care/logging.ts";
import { registerMetrics } from "./care/metrics.ts";
import { type Protection, registerProtection } from "./care/protection.ts";
import { tagTextAnswers } from "./http/answers/caching.ts";
import { compressTextAnswers } from "./http/answers/compressing.ts";
import { writeInTurns } from "./http/answers/in-turns.ts";
import { answerClientError } from "./http/client-errors.ts";
import { closeIdleWhenClosing } from "./http/closing.ts";
import { readJsonBodies } from "./http/json-bodies.ts";
import { keepingOf } from "./http/page-files.ts";
import { handleBadAddress, handleProblems } from "./http/problems.ts";
import { registerUploads } from "./http/sound-upload.ts";
import { serializerCompiler, validatorCompiler } from "./http/validation.ts";
import { PATHS } from "./paths.ts";
import { registerDocumentation } from "./reference/documentation.ts";
import { benchRoutes } from "./routes/bench/bench.ts";
import { diagnoseRoutes } from "./routes/bench/diagnose.ts";
import { heightsRoutes } from "./routes/bench/heights.ts";
import { leadsRoutes } from "./routes/bench/leads.ts";
import { passportRoutes } from "./routes/bench/passport.ts";
import { recogniseRoutes } from "./routes/bench/recognise.ts";
import { rewireRoutes } from "./routes/bench/rewire.ts";
import { roomRoutes } from "./routes/bench/room.ts";
import { stringLevelsRoutes } from "./routes/bench/string-levels.ts";
import { swapCardRoutes } from "./routes/bench/swap-card.ts";
import { switchRoutes } from "./routes/bench/switch-finder.ts";
import { catalogueRoutes } from "./routes/builds/catalogue.ts";
import { expandRoutes } from "./routes/builds/expand.ts";
import { linkRoutes } from "./routes/builds/link.ts";
import { scenarioRoutes } from "./routes/builds/scenarios.ts";
import { shelfLinkRoutes } from "./routes/builds/shelf-link.ts";
import { buildableRoutes } from "./routes/choice/buildable.ts";
import { compareRoutes } from "./routes/choice/compare.ts";
import { dielectricsRoutes } from "./routes/choice/dielectrics.ts";
import { fitRoutes } from "./routes/choice/fit.ts";
import { heardChangeRoutes } from "./routes/choice/heard-change.ts";
import { searchRoutes } from "./routes/choice/search.ts";
import { toleranceRoutes } from "./routes/choice/tolerance.ts";
import { wantedRoutes } from "./routes/choice/wanted.ts";
import { responseRoutes } from "./routes/curves/response.ts";
import { tableRoutes } from "./routes/curves/table.ts";
import { healthRoutes } from "./routes/health/health.ts";
import { examineRoutes } from "./routes/measure/examine.ts";
import { measureRoutes } from "./routes/measure/measure.ts";
import { sweepRoutes } from "./routes/measure/sweep.ts";
import { tapsRoutes } from "./routes/measure/taps.ts";
import type { App, RouteContext } from "./routes/route-context.ts";
import { impulseRoutes } from "./routes/sound/impulse.ts";
import { noiseRoutes } from "./routes/sound/noise.ts";
import { previewRoutes } from "./routes/sound/preview.ts";
import { previewSetRoutes } from "./routes/sound/previews.ts";
import { signalRoutes } from "./routes/sound/signals.ts";
import { WorkerPool } from "./work/worker-pool.ts";

const ROUTES = [
  healthRoutes,
  scenarioRoutes,
  expandRoutes,
  linkRoutes,
  shelfLinkRoutes,
  signalRoutes,
  catalogueRoutes,
  responseRoutes,
  previewRoutes,
  previewSetRoutes,
  impulseRoutes,
  noiseRoutes,
  benchRoutes,
  diagnoseRoutes,
  recogniseRoutes,
  rewireRoutes,
  passportRoutes,
  roomRoutes,
  leadsRoutes,
  heightsRoutes,
  stringLevelsRoutes,
  switchRoutes,
  compareRoutes,
  dielectricsRoutes,
  toleranceRoutes,
  tableRoutes,
  fitRoutes,
  searchRoutes,
  buildableRoutes,
  heardChangeRoutes,
  wantedRoutes,
  swapCardRoutes,
  sweepRoutes,
  measureRoutes,
  examineRoutes,
  tapsRoutes,
];

export interface AppOptions {
  readonly logLevel: LogLevel;
  readonly workers: number;
  readonly trustProxy: TrustedProxies;
  /** Where links lead; where the caller reached the service unless given. */
  readonly publicUrl?: string | undefined;
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

function trusted(proxies: TrustedProxies) {
  if (typeof proxies === "number") return (_address: string, hop: number) => hop < proxies;
  return proxies && [...proxies];
}

/** What every answer goes through, whatever the routes. */
async function bareApp({ logLevel, logStream, trustProxy }: Omit<AppOptions, "workers">): Promise<App> {
  const app = Fastify({
    logger: loggerOptions(logLevel, logStream),
    trustProxy: trusted(trustProxy),
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
  readJsonBodies(app);
  await app.register(helmet, {
    contentSecurityPolicy: CONTENT_SECURITY_POLICY,
    // Set by whoever terminates TLS in front; over plain HTTP it is ignored.
    strictTransportSecurity: false,
  });
  app.addHook("onSend", tagTextAnswers);
  app.addHook("onSend", compressTextAnswers);
  app.addHook("onSend", writeInTurns);
  closeIdleWhenClosing(app);
  return app;
}

/** Curves as the service answers them, by its workers, for nobody: no limit, no figure and no line of the log counts these requests. */
export async function buildRehearsal(pool: WorkerPool): Promise<App> {
  const app = await bareApp({ logLevel: "silent", trustProxy: false });
  await app.register(responseRoutes, { runJob: pool.run });
  return app;
}

/** The service, ready to listen or to be asked by `inject`. Closing it ends its workers. */
export async function buildApp(options: AppOptions): Promise<App> {
  const app = await bareApp(options);
  const pool = options.pool ?? new WorkerPool(options.workers);
  app.addHook("onClose", () => pool.close());
  app.decorate("publicUrl", options.publicUrl);
  registerMetrics(app, pool);
  const kept: (() => void)[] = [];
  await registerProtection(app, options.protection ?? {}, () => {
    for (const forget of kept) forget();
  });
  await registerDocumentation(app);
  await registerUploads(app);
  const context: RouteContext = { runJob: pool.run, whenShortOfMemory: (forget) => void kept.push(forget) };
  for (const routes of ROUTES) await app.register(routes, context);
  await app.register(fastifyStatic, {
    root: PATHS.publicFiles,
    cacheControl: false,
    setHeaders: (reply, path) => void reply.header("cache-control", keepingOf(path)),
    preCompressed: true,
  });
  return app;
}
