import { STATUS_CODES } from "node:http";
import type { FastifyError, FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import type { Problem } from "../../contract/problem.ts";
import { ERROR_TITLES, type ErrorCode, type InputFault, PresolderError } from "../../errors.ts";
import { MAX_BODY_BYTES, MAX_FAULTS_TOLD } from "../../limits.ts";
import { RETRY_AFTER_SECONDS } from "../care/refusals.ts";
import { JobStopped, ServiceBusy, WorkerLost, WorkerOutOfMemory } from "../work/job-failures.ts";
import { collectMethods } from "./allowed-methods.ts";
import { BARE_PAGE_HEADERS, brokenLinkPage, missingPage } from "./small-pages.ts";

/** HTTP status of each error code (RFC 9110). */
export const STATUS_OF_CODE: Readonly<Record<ErrorCode, number>> = {
  BUILD_INVALID: 400,
  SETTINGS_INVALID: 400,
  REQUEST_INVALID: 400,
  WAV_INVALID: 400,
  SOUND_UNUSABLE: 422,
  LIMIT_EXCEEDED: 413,
  LINK_INVALID: 400,
  DATA_INSUFFICIENT: 422,
  NETWORK_SINGULAR: 422,
  NOT_FOUND: 404,
};

export const PROBLEM_MEDIA_TYPE = "application/problem+json; charset=utf-8";

function problemOfCode(code: ErrorCode, detail: string, faults: readonly InputFault[]): Problem {
  return {
    type: `urn:presolder:problem:${code.toLowerCase().replaceAll("_", "-")}`,
    title: ERROR_TITLES[code],
    status: STATUS_OF_CODE[code],
    detail,
    ...(faults.length > 0 ? { errors: faults.slice(0, MAX_FAULTS_TOLD).map((fault) => ({ ...fault })) } : {}),
  };
}

export function plainProblem(status: number, detail?: string): Problem {
  const title = STATUS_CODES[status] ?? "Error";
  return { type: "about:blank", title, status, ...(detail === undefined ? {} : { detail }) };
}

/** Recordings come as files, which have bounds of their own. */
const TOO_LARGE = `the request has more than ${MAX_BODY_BYTES} bytes (${MAX_BODY_BYTES >> 20} MiB); expected no more`;

/** What the caller is told about an error; faults of the service itself stay hidden. */
export function problemOf(error: unknown): Problem {
  if (error instanceof PresolderError) return problemOfCode(error.code, error.message, error.faults);
  if (error instanceof ServiceBusy || error instanceof JobStopped || error instanceof WorkerLost)
    return plainProblem(503, error.message);
  if (error instanceof WorkerOutOfMemory) return plainProblem(500, error.message);
  const { statusCode, message, code } = error as Partial<FastifyError>;
  if (code === "FST_ERR_CTP_BODY_TOO_LARGE") return plainProblem(413, TOO_LARGE);
  if (statusCode !== undefined && statusCode >= 400 && statusCode < 500) return plainProblem(statusCode, message);
  if (statusCode === 503) return plainProblem(503, new ServiceBusy().message);
  return plainProblem(500);
}

function sendProblem(reply: FastifyReply, problem: Problem): FastifyReply {
  const comesBack = problem.status === 503 || problem.status === 429;
  if (comesBack && !reply.hasHeader("retry-after")) reply.header("retry-after", RETRY_AFTER_SECONDS);
  // Headers of the answer that did not come about must not let a cache keep the problem.
  return reply
    .removeHeader("etag")
    .header("cache-control", "no-store")
    .code(problem.status)
    .type(PROBLEM_MEDIA_TYPE)
    .serializer(JSON.stringify)
    .send(problem);
}

export function handleError(error: unknown, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  const problem = problemOf(error);
  if (problem.status >= 500 && !(error instanceof JobStopped)) request.log.error({ err: error }, "request failed");
  return sendProblem(reply, problem);
}

/** An address that cannot even be decoded: a page for a person with a broken link, a problem for anybody else. */
export function handleBadAddress(error: unknown, request: FastifyRequest, reply: FastifyReply): FastifyReply {
  if (!/^\/[bs]\//.test(request.url)) return handleError(error, request, reply);
  const reason = 'the link holds a "%" that stands for no character; it was damaged on its way';
  return reply
    .code(400)
    .headers(BARE_PAGE_HEADERS)
    .send(brokenLinkPage([reason]));
}

/** Whether a person with a browser asks, rather than a program. */
function wantsPage({ method, url, headers }: FastifyRequest): boolean {
  return method === "GET" && !url.startsWith("/api/") && (headers.accept ?? "").includes("text/html");
}

/** One handler for every error, Fastify's own and unknown paths included. */
export function handleProblems(app: FastifyInstance): void {
  app.setErrorHandler(handleError);
  const methodsAt = collectMethods(app);
  app.setNotFoundHandler((request, reply) => {
    const path = (request.url.split("?")[0] ?? "").slice(0, 200);
    reply.header("vary", "accept");
    const methods = methodsAt(path);
    if (methods.length > 0 && !methods.includes(request.method)) {
      const allowed = methods.join(", ");
      const detail = `${path} does not answer ${request.method}; expected ${allowed}`;
      return sendProblem(reply.header("allow", allowed), plainProblem(405, detail));
    }
    if (wantsPage(request))
      return reply
        .code(404)
        .header("cache-control", "no-store")
        .type("text/html; charset=utf-8")
        .send(missingPage(path));
    return sendProblem(reply, problemOfCode("NOT_FOUND", `nothing answers ${request.method} ${path}`, []));
  });
}
