import { deflateRawSync } from "node:zlib";
import Fastify from "fastify";
import { describe, expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { expandSweep } from "../../../src/build-file/sweep.ts";
import { PresolderError } from "../../../src/errors.ts";
import * as limits from "../../../src/limits.ts";
import { renderBatch } from "../../../src/render/preview-set.ts";
import { handleProblems } from "../../../src/server/http/problems.ts";
import { readUpload, registerUploads, type UploadBounds } from "../../../src/server/http/sound-upload.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { PLAN } from "../plan.ts";
import { multipart, useService, withFile } from "../service.ts";
import { pcm } from "../wav-bytes.ts";

const service = useService();
const numbers = (count: number) => Array.from({ length: count }, (_, n) => (10 * n) / count);

function withResolvers() {
  let resolve: () => void = () => {};
  const promise = new Promise<void>((done) => {
    resolve = done;
  });
  return { promise, resolve };
}

async function uploads(bounds: Omit<UploadBounds, "clientBytes">) {
  const small = Fastify({ logger: false }) as unknown as App;
  handleProblems(small);
  await registerUploads(small, { ...bounds, clientBytes: 1_000_000 });
  const gate = withResolvers();
  const entered = withResolvers();
  small.post("/", { preValidation: readUpload }, async (request) => {
    if (request.headers.hold) {
      entered.resolve();
      await gate.promise;
    }
    return { bytes: request.upload!.length };
  });
  const send = async (bytes: number, hold = false) => {
    const { headers, payload } = withFile({}, new Uint8Array(bytes));
    return small.inject({
      method: "POST",
      url: "/",
      payload,
      headers: { ...headers, ...(hold ? { hold: "1" } : {}) },
    });
  };
  return { small, send, release: gate.resolve, entered: entered.promise };
}

describe("limits on bytes", () => {
  test("end a body that is too long", async () => {
    const answer = await service.app.inject({
      method: "POST",
      url: "/api/expand",
      payload: { build: "x".repeat(limits.MAX_BODY_BYTES) },
    });
    expect([answer.statusCode, answer.json().title]).toEqual([413, "Payload Too Large"]);
  });

  test("end the request field of a form that is too long", async () => {
    const form = multipart([{ name: "request", content: `{"build": "${"x".repeat(limits.MAX_BODY_BYTES)}"}` }]);
    expect((await service.app.inject({ method: "POST", url: "/api/preview", ...form })).statusCode).toBe(413);
  });

  test("cut off a link code that unfolds beyond its bound", async () => {
    const bomb = deflateRawSync(JSON.stringify({ build: { title: "x".repeat(limits.MAX_LINK_JSON_BYTES) } }), {
      level: 9,
    });
    const answer = await service.app.inject({ url: `/api/link/1${bomb.toString("base64url")}` });
    expect([answer.statusCode, answer.json().type]).toEqual([400, "urn:presolder:problem:link-invalid"]);
  });

  test("end an upload that is too long", async () => {
    const { small, send } = await uploads({ fileBytes: 1_000, allBytes: 10_000 });
    expect((await send(1_000)).json()).toEqual({ bytes: 1_000 });
    expect((await send(1_001)).statusCode).toBe(413);
    await small.close();
  });

  test("are shared by all uploads in memory, and room comes back when an answer is out", async () => {
    const { small, send, release, entered } = await uploads({ fileBytes: 1_000, allBytes: 1_500 });
    const first = send(1_000, true);
    await entered;
    const second = await send(1_000);
    expect(second.statusCode).toBe(503);
    expect(Number(second.headers["retry-after"])).toBeGreaterThan(0);
    release();
    expect((await first).json()).toEqual({ bytes: 1_000 });
    expect((await send(1_000)).json()).toEqual({ bytes: 1_000 });
    await small.close();
  });

  test("hold for the whole of an archive, before its first sound is made", async () => {
    const build = readBuild(PLAN);
    const refusalOf = (sound: Parameters<typeof pcm>[0], count: number, drive = 0) => {
      const settings = expandSweep(new Controls(build), { tone: numbers(count) });
      const signal = { file: pcm({ ...sound, bits: 8 }) };
      const listening = { drive };
      const set = { build, settings, signal, level: "true", encoding: "float32", from: 0, listening } as const;
      try {
        return renderBatch(set, { checkpoint: () => {} });
      } catch (error) {
        return error instanceof PresolderError ? [error.code, error.faults[0]?.path, error.message] : error;
      }
    };
    const told = (what: string) => ["LIMIT_EXCEEDED", "sweep", expect.stringContaining(what)];
    const minute = { frames: 8_000 * 60 };
    expect(refusalOf(minute, limits.MAX_SET_SECONDS / 60 + 1)).toEqual(told(`${limits.MAX_SET_SECONDS} s`));
    const driven = limits.MAX_DRIVEN_SET_SECONDS;
    expect(refusalOf(minute, driven / 60 + 1, 3)).toEqual(told(`${driven} s through a driven amplifier`));
    const large = { sampleRateHz: 192_000, channels: 2, frames: 192_000 * 60 };
    expect(refusalOf(large, 24)).toEqual(told(`${limits.MAX_SET_BYTES / 2 ** 20} MiB`));
  });
});
