import { afterAll, beforeAll } from "vitest";
import { buildApp } from "../../src/server/app.ts";
import type { App } from "../../src/server/routes/route-context.ts";

/** The service for one test file, asked by `inject`. */
export function useService(workers = 1): { readonly app: App } {
  let app: App | undefined;
  beforeAll(async () => {
    app = await buildApp({ logLevel: "silent", workers, trustProxy: false });
  });
  afterAll(() => app?.close());
  return {
    get app() {
      if (!app) throw new Error("the service is not up yet");
      return app;
    },
  };
}

const BOUNDARY = "----presolder-test";

/** A multipart request by hand, so that broken ones can be made too. */
export function multipart(parts: { name: string; content: string | Uint8Array; filename?: string }[]) {
  const chunks = parts.flatMap(({ name, content, filename }) => [
    Buffer.from(
      `--${BOUNDARY}\r\nContent-Disposition: form-data; name="${name}"${filename ? `; filename="${filename}"` : ""}\r\n` +
        `${filename ? "Content-Type: application/octet-stream\r\n" : ""}\r\n`,
    ),
    Buffer.from(content),
    Buffer.from("\r\n"),
  ]);
  return {
    headers: { "content-type": `multipart/form-data; boundary=${BOUNDARY}` },
    payload: Buffer.concat([...chunks, Buffer.from(`--${BOUNDARY}--\r\n`)]),
  };
}

export function withFile(request: object, file: Uint8Array, filename = "take.wav") {
  return multipart([
    { name: "request", content: JSON.stringify(request) },
    { name: "signal", content: file, filename },
  ]);
}
