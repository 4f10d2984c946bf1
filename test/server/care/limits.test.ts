import { connect } from "node:net";
import { deflateRawSync } from "node:zlib";
import Fastify, { type LightMyRequestResponse } from "fastify";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { expandSweep } from "../../../src/build-file/sweep.ts";
import { PresolderError } from "../../../src/errors.ts";
import * as limits from "../../../src/limits.ts";
import { renderBatch } from "../../../src/render/preview-set.ts";
import { buildApp } from "../../../src/server/app.ts";
import { handleProblems } from "../../../src/server/http/problems.ts";
import { readUpload, registerUploads, type UploadBounds } from "../../../src/server/http/sound-upload.ts";
import type { App } from "../../../src/server/routes/route-context.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { listening, serviceWith } from "../loopback.ts";
import { PLAN } from "../plan.ts";
import { multipart, withFile } from "../service.ts";
import { pcm } from "../wav-bytes.ts";

let app: App;
beforeAll(async () => {
  app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
});
afterAll(() => app.close());

const post = (url: string, payload: object) => app.inject({ method: "POST", url, payload });
const upload = (file: Uint8Array) =>
  app.inject({ method: "POST", url: "/api/preview", ...withFile({ build: PLAN }, file) });
const long = threeSingles();

interface Case {
  readonly limit: string;
  readonly send: () => PromiseLike<LightMyRequestResponse>;
  readonly status: number;
  readonly path: string;
  readonly names: number;
}

const parts = () =>
  Object.fromEntries(Array.from({ length: limits.MAX_PARTS + 1 }, (_, n) => [`t${n}`, { kind: "terminal" }]));
const wires = () => Array.from({ length: limits.MAX_WIRES + 1 }, () => ["jack.tip", "jack.sleeve"]);
const numbers = (count: number) => Array.from({ length: count }, (_, n) => (10 * n) / count);
const screws = (count: number) =>
  Object.fromEntries(
    Array.from({ length: count }, (_, n) => [`p${n}`, { bass: { gap: "2mm" }, treble: { gap: "2mm" } }]),
  );
const levels = (count: number) => Array.from({ length: count }, () => ({ settings: {}, strings: [0, 0, 0, 0, 0, 0] }));

const ANYWHERE = { kind: "anywhere" };
const LOUD = { word: "loud" };

const CASES: readonly Case[] = [
  {
    limit: "parts",
    send: () => post("/api/expand", { build: { ...long, parts: parts() } }),
    status: 400,
    path: "build.parts",
    names: limits.MAX_PARTS,
  },
  {
    limit: "wires",
    send: () => post("/api/expand", { build: { ...long, wires: wires() } }),
    status: 400,
    path: "build.wires",
    names: limits.MAX_WIRES,
  },
  {
    limit: "settings of a sweep",
    send: () => post("/api/response", { build: PLAN, sweep: { tone: numbers(11), volume: numbers(91) } }),
    status: 413,
    path: "sweep",
    names: limits.MAX_SETTINGS,
  },
  {
    limit: "caps asked about",
    send: () => post("/api/dielectrics", { build: PLAN, caps: Array(limits.MAX_ASKED_CAPS + 1).fill("cap1") }),
    status: 400,
    path: "caps",
    names: limits.MAX_ASKED_CAPS,
  },
  {
    limit: "parts of a drawer",
    send: () =>
      post("/api/buildable", {
        drawer: { items: Array(limits.MAX_DRAWER_ITEMS + 1).fill({ part: { kind: "jack" } }) },
      }),
    status: 400,
    path: "drawer.items",
    names: limits.MAX_DRAWER_ITEMS,
  },
  {
    limit: "kits of a drawer",
    send: () =>
      post("/api/buildable", {
        drawer: {
          kits: Array(limits.MAX_DRAWER_KITS + 1).fill({ name: "kit", content: [{ part: { kind: "jack" } }] }),
        },
      }),
    status: 400,
    path: "drawer.kits",
    names: limits.MAX_DRAWER_KITS,
  },
  {
    limit: "reels of wire",
    send: () =>
      post("/api/buildable", {
        drawer: { wires: Array(limits.MAX_DRAWER_WIRES + 1).fill({ kind: "cloth", length: "1m" }) },
      }),
    status: 400,
    path: "drawer.wires",
    names: limits.MAX_DRAWER_WIRES,
  },
  {
    limit: "price of a part",
    send: () =>
      post("/api/buildable", { drawer: { items: [{ part: { kind: "jack" }, price: limits.MAX_PRICE + 1 }] } }),
    status: 400,
    path: "drawer.items.0.price",
    names: limits.MAX_PRICE,
  },
  {
    limit: "soldered guards",
    send: () =>
      post("/api/heard-change", {
        build: PLAN,
        drawer: {},
        soldered: Array(limits.MAX_SOLDERED_GUARDS + 1).fill(PLAN),
      }),
    status: 400,
    path: "soldered",
    names: limits.MAX_SOLDERED_GUARDS,
  },
  {
    limit: "characters of wishes in words",
    send: () => post("/api/wishes", { text: "a".repeat(limits.MAX_WISH_CHARS + 1) }),
    status: 400,
    path: "text",
    names: limits.MAX_WISH_CHARS,
  },
  {
    limit: "places wished for",
    send: () => post("/api/wanted", { wishes: Array(limits.MAX_WISHES + 1).fill({ where: ANYWHERE, asks: [LOUD] }) }),
    status: 400,
    path: "wishes",
    names: limits.MAX_WISHES,
  },
  {
    limit: "words for one place",
    send: () => post("/api/wanted", { wishes: [{ where: ANYWHERE, asks: Array(limits.MAX_ASKS + 1).fill(LOUD) }] }),
    status: 400,
    path: "wishes.0.asks",
    names: limits.MAX_ASKS,
  },
  {
    limit: "loss of a cap",
    send: () =>
      post("/api/expand", { build: { ...long, parts: { c: { kind: "cap", capacitance: 1e-9, lossFactor: 1 } } } }),
    status: 400,
    path: "build.parts.c.lossFactor",
    names: limits.MAX_LOSS_FACTOR,
  },
  {
    limit: "frequencies",
    send: () => post("/api/response", { build: PLAN, frequencies: { count: limits.MAX_FREQUENCIES + 1 } }),
    status: 400,
    path: "frequencies.count",
    names: limits.MAX_FREQUENCIES,
  },
  {
    limit: "points of all curves",
    send: () =>
      post("/api/response", {
        build: PLAN,
        sweep: { tone: numbers(123) },
        frequencies: { count: limits.MAX_FREQUENCIES },
      }),
    status: 413,
    path: "frequencies",
    names: limits.MAX_POINTS,
  },
  {
    limit: "points of each coil's own curves",
    send: () =>
      post("/api/response", {
        build: PLAN,
        sweep: { tone: numbers(25) },
        frequencies: { count: limits.MAX_FREQUENCIES },
        sources: true,
      }),
    status: 413,
    path: "frequencies",
    names: limits.MAX_POINTS,
  },
  {
    limit: "seconds of sound",
    send: () => upload(pcm({ sampleRateHz: 8_000, bits: 8, frames: 8_000 * limits.MAX_AUDIO_SECONDS + 1 })),
    status: 413,
    path: "signal",
    names: limits.MAX_AUDIO_SECONDS,
  },
  {
    limit: "seconds of a cabinet",
    send: () => {
      const request = JSON.stringify({ build: PLAN, listening: { chain: "clean" } });
      const content = pcm({ sampleRateHz: 8_000, frames: 8_000 * limits.MAX_CABINET_SECONDS + 1 });
      const parts = [
        { name: "request", content: request },
        { name: "cabinet", content, filename: "cabinet.wav" },
      ];
      return app.inject({ method: "POST", url: "/api/preview", ...multipart(parts) });
    },
    status: 413,
    path: "cabinet",
    names: limits.MAX_CABINET_SECONDS,
  },
  {
    limit: "channels",
    send: () => upload(pcm({ channels: limits.MAX_AUDIO_CHANNELS + 1 })),
    status: 413,
    path: "signal",
    names: limits.MAX_AUDIO_CHANNELS,
  },
  {
    limit: "highest sample rate",
    send: () => upload(pcm({ sampleRateHz: limits.MAX_SAMPLE_RATE_HZ + 1 })),
    status: 413,
    path: "signal",
    names: limits.MAX_SAMPLE_RATE_HZ,
  },
  {
    limit: "lowest sample rate",
    send: () => upload(pcm({ sampleRateHz: limits.MIN_SAMPLE_RATE_HZ - 1 })),
    status: 413,
    path: "signal",
    names: limits.MIN_SAMPLE_RATE_HZ,
  },
  {
    limit: "meter probes",
    send: () =>
      post("/api/bench", {
        build: PLAN,
        probes: Array(limits.MAX_PROBES + 1).fill({ between: ["jack.tip", "jack.sleeve"] }),
      }),
    status: 400,
    path: "probes",
    names: limits.MAX_PROBES,
  },
  {
    limit: "lugs of a switch",
    send: () =>
      post("/api/switch", {
        lugs: Array.from({ length: limits.MAX_SWITCH_LUGS + 1 }, (_, n) => String(n)),
        positions: 2,
      }),
    status: 400,
    path: "lugs",
    names: limits.MAX_SWITCH_LUGS,
  },
  {
    limit: "touches told of a switch",
    send: () =>
      post("/api/switch", {
        lugs: ["1", "2"],
        positions: 2,
        beeps: Array(limits.MAX_TOUCHES + 1).fill({ between: ["1", "2"], positions: [1] }),
      }),
    status: 400,
    path: "beeps",
    names: limits.MAX_TOUCHES,
  },
  {
    limit: "characters of a link code",
    send: () => app.inject({ url: `/api/link/1${"A".repeat(limits.MAX_LINK_CODE_CHARS)}` }),
    status: 400,
    path: "code",
    names: limits.MAX_LINK_CODE_CHARS,
  },
  {
    limit: "fewest draws",
    send: () => post("/api/tolerance", { build: PLAN, draws: limits.MIN_DRAWS - 1 }),
    status: 400,
    path: "draws",
    names: limits.MIN_DRAWS,
  },
  {
    limit: "most draws",
    send: () => post("/api/tolerance", { build: PLAN, draws: limits.MAX_DRAWS + 1 }),
    status: 400,
    path: "draws",
    names: limits.MAX_DRAWS,
  },
  {
    limit: "pickups on screws",
    send: () => post("/api/heights", { build: PLAN, pickups: screws(limits.MAX_MOVED_PICKUPS + 1) }),
    status: 400,
    path: "pickups",
    names: limits.MAX_MOVED_PICKUPS,
  },
  {
    limit: "rows of levels",
    send: () => post("/api/heights", { build: PLAN, levels: levels(limits.MAX_HEIGHT_ROWS + 1) }),
    status: 400,
    path: "levels",
    names: limits.MAX_HEIGHT_ROWS,
  },
  {
    limit: "plucks of one string",
    send: () =>
      app.inject({
        method: "POST",
        url: "/api/string-levels",
        ...withFile({ plucks: limits.MAX_PLUCKS + 1 }, pcm()),
      }),
    status: 400,
    path: "plucks",
    names: limits.MAX_PLUCKS,
  },
];

describe("beyond a limit, a request is refused with the field and the limit named", () => {
  test.each(CASES)("$limit", async ({ send, status, path, names }) => {
    const answer = await send();
    expect(answer.headers["content-type"]).toContain("application/problem+json");
    const problem = answer.json();
    expect([problem.status, answer.statusCode, problem.errors?.[0]?.path]).toEqual([status, status, path]);
    expect(problem.detail.replaceAll(/[,\s]/g, "")).toContain(String(names));
  });
});

describe("limits on bytes", () => {
  test("end a body that is too long", async () => {
    const answer = await post("/api/expand", { build: "x".repeat(limits.MAX_BODY_BYTES) });
    expect([answer.statusCode, answer.json().title]).toEqual([413, "Payload Too Large"]);
  });

  test("end the request field of a form that is too long", async () => {
    const form = multipart([{ name: "request", content: `{"build": "${"x".repeat(limits.MAX_BODY_BYTES)}"}` }]);
    expect((await app.inject({ method: "POST", url: "/api/preview", ...form })).statusCode).toBe(413);
  });

  test("cut off a link code that unfolds beyond its bound", async () => {
    const bomb = deflateRawSync(JSON.stringify({ build: { title: "x".repeat(limits.MAX_LINK_JSON_BYTES) } }), {
      level: 9,
    });
    const answer = await app.inject({ url: `/api/link/1${bomb.toString("base64url")}` });
    expect([answer.statusCode, answer.json().type]).toEqual([400, "urn:presolder:problem:link-invalid"]);
  });

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

describe("limits on time", () => {
  test("are set on the server for headers, requests and silence", () => {
    expect(app.server.headersTimeout).toBe(limits.HEADERS_TIMEOUT_MS);
    expect(app.server.requestTimeout).toBe(limits.REQUEST_TIMEOUT_MS);
    expect(app.server.timeout).toBe(limits.CONNECTION_TIMEOUT_MS);
  });

  test("end a connection whose headers do not come, with problem details", async () => {
    const slow = await serviceWith();
    slow.server.headersTimeout = 100;
    const socket = connect({ host: "127.0.0.1", port: await listening(slow) });
    socket.write("GET /healthz HTTP/1.1\r\nHost: x\r\nX-Slow: ");
    let text = "";
    for await (const chunk of socket) text += chunk;
    expect(text).toMatch(/^HTTP\/1\.1 408 .*application\/problem\+json.*"status":408/s);
  });

  test("do not keep headers of any length", async () => {
    const port = await listening(await serviceWith());
    const socket = connect({ host: "127.0.0.1", port });
    socket.write(`GET /healthz HTTP/1.1\r\nHost: x\r\nX-Long: ${"a".repeat(20_000)}\r\n\r\n`);
    let text = "";
    for await (const chunk of socket) text += chunk;
    expect(text).toMatch(/^HTTP\/1\.1 431 .*application\/problem\+json/s);
  });
});
