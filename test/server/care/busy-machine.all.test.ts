import Fastify from "fastify";
import { describe, expect, test } from "vitest";
import { registerProtection } from "../../../src/server/care/protection.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { BuildShelf } from "../../../src/server/shelves/build-shelf.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { call, listening, open, serviceWith, until } from "../loopback.ts";

const CURVE = { build: threeSingles() };
const curveOf = (port: number, headers: Record<string, string> = {}) =>
  call({ port, path: "/api/response", body: CURVE, headers });
const somebody = (number: number) => ({ "x-forwarded-for": `192.0.2.${number}` });
const FORM = { "content-type": "multipart/form-data; boundary=x", "content-length": "100000" };

describe("on a machine that is busy with something else", () => {
  test("nobody is refused because the event loop came late", async () => {
    const app = await serviceWith({ trustProxy: 1, protection: { memoryBytes: Number.MAX_SAFE_INTEGER } });
    const port = await listening(app);
    const end = performance.now() + 1_500;
    while (performance.now() < end);
    const answers = await Promise.all([curveOf(port), curveOf(port, somebody(1))]);
    expect(answers.map(({ status }) => status)).toEqual([200, 200]);
  });
});

describe("a full service", () => {
  test("refuses what comes on top of very many requests under way, but not one person at this machine", async () => {
    const app = await serviceWith({ trustProxy: 1, protection: { requestsUnderWay: 1 } });
    const port = await listening(app);
    const slow = open({ port, path: "/api/preview", headers: { ...FORM, ...somebody(1) }, unfinished: true });
    slow.request.write("--x\r\n");
    await until(async () => (await curveOf(port, somebody(2))).status === 503, "the slow request is there");
    expect((await curveOf(port)).status).toBe(200);
    expect((await call({ port, path: "/healthz", method: "GET", headers: somebody(3) })).status).toBe(200);
    slow.request.destroy();
    await until(async () => (await curveOf(port, somebody(2))).status === 200, "it has gone");
  });

  test("renders for one person at this machine where there is no room for others", async () => {
    const gate = { perClient: 10, renders: 0, sets: 0 };
    const app = await serviceWith({ trustProxy: 1, protection: { gate } });
    const port = await listening(app);
    expect([(await curveOf(port)).status, (await curveOf(port, somebody(1))).status]).toEqual([200, 503]);
  });

  test("takes one person's second request for what it is", async () => {
    const app = await serviceWith({ protection: { gate: { perClient: 10, renders: 0, sets: 0 } } });
    const port = await listening(app);
    const slow = open({ port, path: "/api/preview", headers: FORM, unfinished: true });
    slow.request.write("--x\r\n");
    await until(async () => (await curveOf(port)).status === 503, "the slow request is there");
    slow.request.destroy();
  });
});

describe("where memory is short", () => {
  test("others are refused, one person at this machine is not, and whoever watches hears", async () => {
    const app = await serviceWith({ trustProxy: 1, protection: { memoryBytes: 1 } });
    const port = await listening(app);
    await until(async () => (await curveOf(port, somebody(1))).status === 503, "memory was measured");
    expect((await curveOf(port)).status).toBe(200);
    expect((await call({ port, path: "/healthz", method: "GET", headers: somebody(1) })).status).toBe(200);
  });

  test("what is kept for speed alone is forgotten, and only then", async () => {
    const forgotten = new Set<number>();
    for (const memoryBytes of [Number.MAX_SAFE_INTEGER, 1]) {
      const bare = Fastify() as unknown as App;
      await registerProtection(bare, { memoryBytes }, () => forgotten.add(memoryBytes));
      bare.get("/", async () => "");
      const asks = async () => {
        await bare.inject("/");
        return bare.memoryUsage().rssBytes > 0;
      };
      await until(asks, "memory was measured");
      await asks();
      await bare.close();
    }
    expect(forgotten).toEqual(new Set([1]));
    const shelf = new BuildShelf();
    const reader = shelf.readerOf(CURVE.build);
    expect(shelf.readerOf(CURVE.build)).toBe(reader);
    shelf.clear();
    expect(shelf.readerOf(CURVE.build)).not.toBe(reader);
  });
});
