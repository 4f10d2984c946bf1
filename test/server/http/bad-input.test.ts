import { describe, expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";
import { multipart, useService, withFile } from "../service.ts";

const service = useService();
const guard = threeSingles() as Record<string, unknown>;

interface Refusal {
  readonly status: number;
  readonly type: string;
  readonly path?: string;
  readonly says?: RegExp;
}

async function expectRefusal(request: object, wanted: Refusal): Promise<void> {
  const reply = await service.app.inject({ method: "POST", ...request } as never);
  const problem = reply.json();
  expect(reply.headers["content-type"]).toBe("application/problem+json; charset=utf-8");
  expect(problem).toMatchObject({ type: `urn:presolder:problem:${wanted.type}`, status: wanted.status });
  expect(reply.statusCode).toBe(wanted.status);
  if (wanted.path !== undefined)
    expect(problem.errors.map(({ path }: { path: string }) => path)).toContain(wanted.path);
  if (wanted.says) expect(problem.detail).toMatch(wanted.says);
  // The next caller is served as if nothing had happened.
  const next = await service.app.inject({ url: "/healthz" });
  expect(next.statusCode).toBe(200);
}

const json = (url: string, payload: unknown) => ({ url, payload: payload as object });
const withParts = (parts: object) => threeSingles({ parts });
const pot = (resistance: unknown) => ({ kind: "pot", role: "volume", resistance, taper: "audio" });

describe("a build file at fault is refused with the field's name", () => {
  it.each<[string, unknown, Refusal]>([
    ["no object", 7, { status: 400, type: "build-invalid", path: "build" }],
    [
      "an unknown key",
      { ...guard, cabel: {} },
      { status: 400, type: "build-invalid", says: /cabel.*did you mean "cable"/ },
    ],
    [
      "a negative value",
      withParts({ volume: pot("-250k") }),
      { status: 400, type: "build-invalid", path: "build.parts.volume.resistance" },
    ],
    [
      "a zero value",
      withParts({ volume: pot(0) }),
      { status: 400, type: "build-invalid", path: "build.parts.volume.resistance" },
    ],
    [
      "an absurd value",
      withParts({ volume: pot("1e30") }),
      { status: 400, type: "build-invalid", path: "build.parts.volume.resistance" },
    ],
    [
      "a value that is none",
      withParts({ volume: pot("loud") }),
      { status: 400, type: "build-invalid", path: "build.parts.volume.resistance" },
    ],
    [
      "a decimal comma",
      withParts({ volume: pot("2,5k") }),
      { status: 400, type: "build-invalid", path: "build.parts.volume.resistance" },
    ],
    [
      "an unknown lug",
      threeSingles({ wires: [["neck.hot", "lever.A9"]] }),
      { status: 400, type: "build-invalid", says: /lever\.A9/ },
    ],
    [
      "no jack",
      { presolder: 1, parts: { neck: (guard.parts as Record<string, unknown>).neck }, wires: [] },
      { status: 400, type: "build-invalid", path: "build.parts", says: /no jack/ },
    ],
    ["another version", { ...guard, presolder: 2 }, { status: 400, type: "build-invalid", path: "build.presolder" }],
    [
      "a part named like an object's own property",
      withParts({ constructor: { kind: "jack" } }),
      { status: 400, type: "build-invalid" },
    ],
  ])("%s", (_name, build, wanted) => expectRefusal(json("/api/response", { build }), wanted));
});

describe("a request at fault is refused with the field's name", () => {
  it.each<[string, object, Refusal]>([
    [
      "wrong JSON",
      { url: "/api/response", headers: { "content-type": "application/json" }, payload: '{"build": ' },
      { status: 400, type: "request-invalid", path: "body" },
    ],
    [
      "no JSON at all",
      { url: "/api/response", headers: { "content-type": "application/json" }, payload: "" },
      { status: 400, type: "request-invalid", path: "body" },
    ],
    ["a list", json("/api/response", []), { status: 400, type: "request-invalid", path: "body" }],
    ["no build", json("/api/response", {}), { status: 400, type: "request-invalid", path: "build" }],
    [
      "an unknown key",
      json("/api/response", { build: guard, frequency: [1] }),
      { status: 400, type: "request-invalid", path: "frequency", says: /did you mean "frequencies"/ },
    ],
    [
      "a frequency of 0",
      json("/api/response", { build: guard, frequencies: [100, 0] }),
      { status: 400, type: "request-invalid", path: "frequencies.1" },
    ],
    [
      "a frequency beyond reason",
      json("/api/response", { build: guard, frequencies: [1e9] }),
      { status: 400, type: "request-invalid", path: "frequencies.0" },
    ],
    [
      "too many frequencies",
      json("/api/response", { build: guard, frequencies: { count: 100_000 } }),
      { status: 400, type: "request-invalid", path: "frequencies.count" },
    ],
    [
      "a control there is not",
      json("/api/response", { build: guard, settings: { levr: 1 } }),
      { status: 400, type: "settings-invalid", path: "settings.levr", says: /did you mean "lever"/ },
    ],
    [
      "a position there is not",
      json("/api/response", { build: guard, settings: { lever: 6 } }),
      { status: 400, type: "settings-invalid", path: "settings.lever" },
    ],
    [
      "a dial beyond 10",
      json("/api/response", { build: guard, settings: { tone: 11 } }),
      { status: 400, type: "settings-invalid", path: "settings.tone" },
    ],
    [
      "a sweep of too many settings",
      json("/api/response", { build: guard, sweep: { lever: Array(200).fill(1), tone: Array(200).fill(1) } }),
      { status: 413, type: "limit-exceeded", path: "sweep" },
    ],
    [
      "a sweep beside what it wants",
      json("/api/response", { build: guard, sweep: { lever: 1 } }),
      { status: 400, type: "request-invalid", path: "sweep.lever" },
    ],
    [
      "a string without its fret",
      json("/api/response", { build: guard, string: 3 }),
      { status: 400, type: "request-invalid", path: "fret" },
    ],
    [
      "a string the guitar has not",
      json("/api/response", { build: guard, string: 9, fret: 0 }),
      { status: 400, type: "request-invalid", path: "string" },
    ],
    [
      "an unknown signal",
      json("/api/preview", { build: guard, signal: "strumm" }),
      { status: 400, type: "request-invalid", path: "signal", says: /did you mean "strum"/ },
    ],
    [
      "an unknown encoding",
      json("/api/preview", { build: guard, encoding: "mp3" }),
      { status: 400, type: "request-invalid", path: "encoding" },
    ],
    [
      "a rate too low",
      json("/api/preview", { build: guard, rate: 100 }),
      { status: 400, type: "request-invalid", path: "rate" },
    ],
    [
      "hum of another mains",
      json("/api/preview", { build: guard, hum: 55 }),
      { status: 400, type: "request-invalid", path: "hum" },
    ],
    [
      "a circuit to undo without a recording",
      json("/api/preview", { build: guard, recordedWith: { build: guard } }),
      { status: 400, type: "request-invalid", path: "recordedWith" },
    ],
    [
      "more sound than a set may hold",
      json("/api/previews", {
        build: guard,
        signal: "sweep",
        sweep: {
          lever: [1, 2, 3, 4, 5],
          tone: [0, 1, 2, 3, 4, 5, 6, 7, 8, 9],
          volume: [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
        },
      }),
      { status: 413, type: "limit-exceeded", path: "sweep" },
    ],
    [
      "a build too long for a link",
      json("/api/link", {
        build: { ...guard, notes: noise(4000), title: noise(200) },
        view: Object.fromEntries(Array.from({ length: 40 }, (_, i) => [`k${i}`, noise(900, i + 1)])),
      }),
      { status: 413, type: "limit-exceeded", path: "build" },
    ],
  ])("%s", (_name, request, wanted) => expectRefusal(request, wanted));
});

/** Text that hardly shrinks. */
function noise(length: number, seed = 1): string {
  let state = seed;
  return Array.from({ length }, () => {
    state = (state * 48_271) % 2_147_483_647;
    return String.fromCharCode(33 + (state % 90));
  }).join("");
}

const wav = encodeWav({ sampleRateHz: 8000, channels: [Float32Array.of(0, 0.5, -0.5, 0.25)] }, "pcm16");
const nan = encodeWav({ sampleRateHz: 8000, channels: [Float32Array.of(0, 0.5)] }, "float32");
new DataView(nan.buffer).setFloat32(nan.length - 4, Number.NaN, true);
const lying = wav.slice();
new DataView(lying.buffer).setUint32(40, 4000, true);
const empty = wav.slice(0, 44);
new DataView(empty.buffer).setUint32(40, 0, true);
new DataView(empty.buffer).setUint32(4, 36, true);
const long = encodeWav({ sampleRateHz: 8000, channels: [new Float32Array(61 * 8000)] }, "pcm16");
const png = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0, 0, 13, 0x49, 0x48, 0x44, 0x52]);

describe.each(["/api/preview", "/api/previews"])("a sound file at fault is refused by %s", (url) => {
  const request = { build: onePickup(), settings: { tone: 5 } };
  it.each<[string, Uint8Array, Refusal]>([
    ["cut short", wav.slice(0, 47), { status: 400, type: "wav-invalid", path: "signal" }],
    [
      "whose header lies about its length",
      lying,
      { status: 400, type: "wav-invalid", path: "signal", says: /4000 bytes/ },
    ],
    ["of 0 samples", empty, { status: 422, type: "sound-unusable", path: "signal" }],
    ["with a sample that is NaN", nan, { status: 422, type: "sound-unusable", path: "signal", says: /sample 1/ }],
    ["that is a PNG", png, { status: 400, type: "wav-invalid", path: "signal", says: /PNG/ }],
    ["of no bytes", new Uint8Array(0), { status: 400, type: "wav-invalid", path: "signal" }],
    ["longer than a minute", long, { status: 413, type: "limit-exceeded", path: "signal", says: /61\.00 s/ }],
  ])("%s", (_name, file, wanted) => expectRefusal({ url, ...withFile(request, file) }, wanted));

  it.each<[string, object, Refusal]>([
    [
      "without its request",
      multipart([{ name: "signal", content: wav, filename: "a.wav" }]),
      { status: 400, type: "request-invalid", path: "request" },
    ],
    [
      "without a file",
      multipart([{ name: "request", content: JSON.stringify(request) }]),
      { status: 400, type: "request-invalid", path: "signal" },
    ],
    [
      "with a request that is no JSON",
      multipart([
        { name: "request", content: "{" },
        { name: "signal", content: wav, filename: "a.wav" },
      ]),
      { status: 400, type: "request-invalid", path: "request" },
    ],
    [
      "under another name",
      multipart([{ name: "file", content: wav, filename: "a.wav" }]),
      { status: 400, type: "request-invalid", path: "file" },
    ],
    [
      "beside a signal's name",
      withFile({ ...request, signal: "strum" }, wav),
      { status: 400, type: "request-invalid", path: "signal" },
    ],
    [
      "with a rate of its own",
      withFile({ ...request, rate: 48_000 }, wav),
      { status: 400, type: "request-invalid", path: "rate" },
    ],
    [
      "recorded with a build at fault",
      withFile({ ...request, recordedWith: { build: {} } }, wav),
      { status: 400, type: "build-invalid", path: "recordedWith.build.parts" },
    ],
    [
      "recorded in settings there are not",
      withFile({ ...request, recordedWith: { build: onePickup(), settings: { x: 1 } } }, wav),
      { status: 400, type: "settings-invalid", path: "recordedWith.settings.x" },
    ],
    [
      "recorded through a circuit that is silent",
      withFile({ ...request, recordedWith: { build: onePickup(), settings: { volume: 0 } } }, wav),
      { status: 422, type: "sound-unusable", path: "recordedWith.settings" },
    ],
  ])("sent %s", (_name, sent, wanted) => expectRefusal({ url, ...sent }, wanted));
});

describe("HTTP itself", () => {
  it("answers 415 to a body of another type", async () => {
    const reply = await service.app.inject({
      method: "POST",
      url: "/api/response",
      headers: { "content-type": "text/xml" },
      payload: "<a/>",
    });
    expect(reply.statusCode).toBe(415);
    expect(reply.json()).toMatchObject({ status: 415, title: "Unsupported Media Type" });
  });

  it("answers 413 to a JSON body over a megabyte", async () => {
    const reply = await service.app.inject({
      method: "POST",
      url: "/api/response",
      payload: { build: "x".repeat(1_100_000) },
    });
    expect(reply.statusCode).toBe(413);
    expect(reply.json()).toMatchObject({ status: 413, detail: expect.stringContaining("1048576 bytes") });
  });

  it.each(["/api/nothing", "/built/../../package.json", "/..%2f..%2fpackage.json", "/api/scenarios/..%2fpackage"])(
    "answers 404 to %s",
    async (url) => {
      const reply = await service.app.inject({ url });
      expect(reply.statusCode).toBe(404);
      expect(reply.headers["content-type"]).toContain("application/problem+json");
    },
  );

  it.each([
    ["GET", "/api/response", "POST"],
    ["DELETE", "/api/scenarios", "GET, HEAD"],
    ["POST", "/api/link/abc", "GET, HEAD"],
    ["PUT", "/healthz", "GET, HEAD"],
  ] as const)("answers 405 to %s %s, and names the methods there are", async (method, url, allowed) => {
    const reply = await service.app.inject({ method, url });
    expect(reply.statusCode).toBe(405);
    expect(reply.headers.allow).toBe(allowed);
    expect(reply.json()).toMatchObject({
      status: 405,
      title: "Method Not Allowed",
      detail: `${url} does not answer ${method}; expected ${allowed}`,
    });
  });

  it.each(["GET", "POST"] as const)("answers 404 to %s with a slash too many", async (method) => {
    expect((await service.app.inject({ method, url: "/api/response/" })).statusCode).toBe(404);
  });

  it("tells nothing of its inside where it is at fault itself", async () => {
    const { problemOf } = await import("../../../src/server/http/problems.ts");
    expect(problemOf(new Error("/secret/path"))).toEqual({
      type: "about:blank",
      title: "Internal Server Error",
      status: 500,
    });
  });
});
