import { type ClientRequest, request as httpRequest, type IncomingMessage } from "node:http";
import type { AddressInfo } from "node:net";
import { onTestFinished } from "vitest";
import { type AppOptions, buildApp } from "../../src/server/app.ts";
import type { App } from "../../src/server/routes/route-context.ts";

export interface Answer {
  readonly status: number;
  readonly headers: IncomingMessage["headers"];
  readonly body: Buffer;
}

/** The service for one test, closed after it. */
export async function serviceWith(options: Partial<AppOptions> = {}): Promise<App> {
  const app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false, ...options });
  onTestFinished(() => app.close());
  return app;
}

export async function listening(app: App): Promise<number> {
  await app.listen({ host: "127.0.0.1", port: 0 });
  return (app.server.address() as AddressInfo).port;
}

interface Call {
  readonly port: number;
  readonly path: string;
  readonly method?: string;
  readonly headers?: Record<string, string>;
  readonly body?: unknown;
  /** Whether more of the body is to come. */
  readonly unfinished?: boolean;
}

/** Opens a request on a real socket, so that it can be broken off. Its answer never rejects unheard. */
export function open({ port, path, method = "POST", headers = {}, body, unfinished = false }: Call): {
  readonly request: ClientRequest;
  readonly answer: Promise<Answer>;
} {
  const payload = body === undefined ? undefined : JSON.stringify(body);
  const type: Record<string, string> = payload === undefined ? {} : { "content-type": "application/json" };
  const request = httpRequest({ host: "127.0.0.1", port, path, method, headers: { ...type, ...headers } });
  const answer = new Promise<Answer>((resolve, reject) => {
    request.on("error", reject);
    request.on("response", (response) => {
      const chunks: Buffer[] = [];
      response.on("data", (chunk: Buffer) => chunks.push(chunk));
      response.on("error", reject);
      response.on("end", () =>
        resolve({ status: response.statusCode!, headers: response.headers, body: Buffer.concat(chunks) }),
      );
    });
  });
  answer.catch(() => {});
  if (!unfinished) request.end(payload);
  return { request, answer };
}

export const call = (what: Call): Promise<Answer> => open(what).answer;

/** Waits for a condition that other threads bring about. */
export async function until(condition: () => boolean | Promise<boolean>, what: string): Promise<void> {
  const end = performance.now() + 30_000;
  while (!(await condition())) {
    if (performance.now() > end) throw new Error(`waited 30 s in vain until ${what}`);
    await new Promise((resolve) => setTimeout(resolve, 5));
  }
}
