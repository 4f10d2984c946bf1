import { afterAll, beforeAll, expect, test } from "vitest";
import { buildApp } from "../../../src/server/app.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { PLAN } from "../plan.ts";
import { multipart } from "../service.ts";
import { pcm } from "../wav-bytes.ts";

let app: App;
beforeAll(async () => {
  app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
});
afterAll(() => app.close());

test("the request beside a sound file may be text, say that it is JSON, or be a file itself", async () => {
  const content = JSON.stringify({ build: PLAN, level: "true" });
  const signal = { name: "signal", content: pcm({ frames: 400 }), filename: "a.wav" };
  const text = multipart([{ name: "request", content }, signal]);
  const typed = {
    headers: text.headers,
    payload: Buffer.from(
      text.payload.toString("latin1").replace('name="request"', 'name="request"\r\nContent-Type: application/json'),
      "latin1",
    ),
  };
  const file = multipart([{ name: "request", content, filename: "request.json" }, signal]);
  const answers = await Promise.all(
    [text, typed, file].map((form) => app.inject({ method: "POST", url: "/api/preview", ...form })),
  );
  expect(answers.map(({ statusCode }) => statusCode)).toEqual([200, 200, 200]);
  expect(new Set(answers.map(({ rawPayload }) => rawPayload.toString("base64"))).size).toBe(1);
});
