import { readdirSync, readFileSync } from "node:fs";
import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import type { InjectOptions } from "fastify";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";
import type { Random } from "../../random.ts";
import { PLAN } from "../plan.ts";
import { pcm } from "../wav-bytes.ts";
import { mutateBytes, mutateJson, mutateText, mutateValues } from "./mutate.ts";

const scenarios = readdirSync("scenarios").map((file) => JSON.parse(readFileSync(`scenarios/${file}`, "utf8")).build);
const BUILDS: readonly unknown[] = [PLAN, PLAN, PLAN, onePickup(), threeSingles(), ...scenarios];
const FEW = { from: 20, to: 20_000, count: 16 };
const RESONANCES = [
  { capacitance: "100p", frequency: "8k" },
  { capacitance: "470p", frequency: 5200 },
  { capacitance: "1n", frequency: 3900 },
];
const TABLE = "100, 6200\n1000, 16000\n3000, 60000\n6000, 200000\n9000, 90000";
const SCREWS = { bridge: { bass: { gap: "2.4mm", pitch: "0.8mm" }, treble: { gap: "2mm", pitch: "0.8mm" } } };
const LEVELS = [
  { settings: { lever: 1 }, strings: [-20, -20.4, -21, -20, -19.8, -20.2] },
  {
    heights: { bridge: { bass: "3.4mm", treble: "3mm" } },
    settings: { lever: 1 },
    strings: [-25, -25.2, -26, -24.9, -25, -25.1],
  },
];

/** Sound requests at the lowest rate, so that a hundred thousand of them are a matter of minutes. */
const QUICK = { signal: "click", rate: 8_000 };

type Body = (build: unknown, random: Random) => object;

/** Bodies that are right, by path; each is then spoilt. How often each is asked balances what it costs. */
export const BODIES: readonly (readonly [path: string, weight: number, body: Body])[] = [
  ["/api/expand", 24, (build) => ({ build })],
  ["/api/recognise", 8, (build) => ({ build })],
  ["/api/link", 8, (build) => ({ build, view: { lever: 1 } })],
  ["/api/response", 30, (build) => ({ build, settings: {}, frequencies: FEW })],
  [
    "/api/response",
    10,
    (build) => ({ build, settings: {}, frequencies: [20, "1k", 20_000], sources: true, string: 3, fret: 5 }),
  ],
  ["/api/response", 4, (build) => ({ build, frequencies: { ...FEW, count: 3 } })],
  [
    "/api/bench",
    8,
    (build) => ({
      build,
      temperature: 25,
      meter: { kind: "auto-6000", leads: "0.3", counts: 4000 },
      probes: [{ between: ["jack.tip", "jack.sleeve"], settings: { lever: 2 } }],
    }),
  ],
  [
    "/api/bench",
    2,
    (build) => ({ build, solve: { coil: { reading: "5.9k", pot: "250k" }, sweep: { atTen: "5.9k", highest: "64k" } } }),
  ],
  ["/api/preview", 8, (build) => ({ build, settings: {}, ...QUICK, level: "matched", encoding: "float32", hum: 50 })],
  [
    "/api/preview",
    2,
    (build) => ({
      build,
      ...QUICK,
      encoding: "float32",
      noise: { hum: "60", hiss: true, field: { microtesla: 1, harmonics: 2 }, amplifier: { nanovolts: 5 } },
    }),
  ],
  [
    "/api/noise",
    2,
    (build) => ({
      build,
      settings: { volume: 7 },
      hum: "60",
      field: { voltsPerMetre: 5 },
      amplifier: { picoamperes: 1 },
    }),
  ],
  ["/api/previews", 1, (build) => ({ build, sweep: { tone: [0, 10] }, ...QUICK, encoding: "float32" })],
  ["/api/compare", 1, (build) => ({ builds: [build, PLAN], settings: {}, tolerance: false })],
  [
    "/api/leads",
    2,
    (build) => ({
      build,
      place: "bridge",
      leads: ["red", "white", "bare"],
      rows: ["poles"],
      readings: [{ between: ["red", "white"], ohms: "6k" }],
      metal: [{ lead: "bare", ohms: 0.2 }],
      kicks: [{ row: "poles", between: ["red", "white"], kick: "up" }],
      compass: [{ row: "poles", draws: "south" }],
    }),
  ],
  [
    "/api/switch",
    2,
    (build) => ({
      lugs: ["1", "2", "3", { name: "4" }],
      positions: 3,
      beeps: [
        { between: ["1", "2"], positions: [1, 2] },
        { between: ["2", "3"], position: 2, beeps: false },
      ],
      build,
      part: "lever",
      moves: { A0: "1" },
    }),
  ],
  ["/api/rewire", 1, (build) => ({ from: build, to: PLAN })],
  ["/api/rewire", 1, (build) => ({ from: PLAN, to: build })],
  ["/api/heights", 1, (build) => ({ build, from: PLAN })],
  ["/api/heights", 1, () => ({ build: PLAN, pickups: SCREWS, levels: LEVELS, target: { reference: { lever: 1 } } })],
  ["/api/table", 1, (build) => ({ build, sweep: { tone: [0, 10] } })],
  ["/api/dielectrics", 1, (build) => ({ build, caps: ["cap1"] })],
  [
    "/api/fit",
    2,
    () => ({ method: "resonances", resistance: "6k", readings: RESONANCES, across: { capacitance: "10p" } }),
  ],
  ["/api/fit", 1, () => ({ method: "impedance", table: TABLE, resistance: "6k" })],
  [
    "/api/fit",
    1,
    () => ({
      method: "two-loads",
      table: TABLE,
      load: { resistance: "200k", capacitance: "470p" },
      second: { table: TABLE, load: { capacitance: "10n" } },
    }),
  ],
  ["/api/fit", 1, () => ({ method: "response", table: TABLE, load: { resistance: "1M", capacitance: "100p" } })],
  ["/api/wishes", 1, () => ({ text: "glassy 4, hum-free 2" })],
  [
    "/api/wanted",
    1,
    () => ({
      wishes: [{ where: { kind: "position", position: 4 }, asks: [{ word: "glassy" }] }],
      starts: ["one-p90"],
      plan: { layout: "one-pickup", pickups: { bridge: "p90" }, volume: "500k", tones: [] },
      values: { volume: ["500k"], bleed: ["none"] },
      switches: false,
    }),
  ],
  ["/api/swap-card", 1, () => ({ out: PLAN, in: PLAN, how: { jack: "plug" } })],
  [
    "/api/search",
    1,
    (build) => ({ build, free: [{ cable: true, values: ["3m", "6m"] }], wish: { kind: "peak", frequency: "4k" } }),
  ],
  [
    "/api/diagnose",
    1,
    (build) => ({ build, readings: [{ between: ["jack.tip", "jack.sleeve"], ohms: null, settings: {} }] }),
  ],
  [
    "/api/diagnose",
    1,
    (build) => ({
      build,
      readings: [{ between: ["jack.tip", "jack.sleeve"], ohms: "OL", range: "20k" }],
      meter: { kind: "manual-2000", leads: "0.4", error: { share: 0.01, digits: 2 } },
    }),
  ],
];
const TICKETS = BODIES.flatMap((entry) => Array<typeof entry>(entry[1]).fill(entry));
const JSON_HEADERS = { "content-type": "application/json" };

function postJson(url: string, body: unknown): InjectOptions {
  return { method: "POST", url, headers: JSON_HEADERS, payload: JSON.stringify(body) ?? "" };
}

function bodyRequest(random: Random): InjectOptions {
  const [url, , body] = random.pick(TICKETS);
  const right = body(random.pick(BUILDS), random);
  const build = (right as { build?: unknown }).build;
  if (build === undefined) return postJson(url, mutateJson(right, random));
  const way = random.next();
  if (way < 0.5) return postJson(url, { ...right, build: mutateValues(build, random) });
  return postJson(url, way < 0.8 ? { ...right, build: mutateJson(build, random) } : mutateJson(right, random));
}

function bytesRequest(random: Random): InjectOptions {
  const [url, , body] = random.pick(TICKETS);
  const payload = mutateBytes(Buffer.from(JSON.stringify(body(random.pick(BUILDS), random))), random);
  return { method: "POST", url, headers: JSON_HEADERS, payload };
}

const anything = fc.oneof(fc.jsonValue({ maxDepth: 4 }), fc.record({ build: fc.jsonValue({ maxDepth: 3 }) }));

function anythingRequest(random: Random): InjectOptions {
  const [url] = random.pick(TICKETS);
  const [value] = fc.sample(anything, { seed: random.below(2 ** 31), numRuns: 1 });
  return { method: "POST", url, headers: JSON_HEADERS, payload: JSON.stringify(value) };
}

function codeOf(random: Random): string {
  const build = random.pick(BUILDS);
  const spoilt = random.chance(0.4)
    ? mutateValues(build, random)
    : random.chance(0.3)
      ? mutateJson(build, random)
      : build;
  const content = JSON.stringify({ build: spoilt });
  const packed = deflateRawSync(random.chance(0.1) ? mutateBytes(Buffer.from(content), random) : content);
  const code = `1${(random.chance(0.1) ? mutateBytes(packed, random) : packed).toString("base64url")}`;
  return random.chance(0.1) ? mutateText(code, random) : code;
}

const QUERY_KEYS = [
  "lever",
  "tone",
  "volume",
  "signal",
  "rate",
  "level",
  "encoding",
  "hum",
  "noise",
  "hiss",
  "coil",
  "over",
  "over.lever",
  "x",
  "build",
];
const QUERY_VALUES = [
  "1",
  "0",
  "10",
  "11",
  "-1",
  "1e9",
  "NaN",
  "",
  "click",
  "sweep",
  "8000",
  "192001",
  "true",
  "float32",
  "50",
  "down",
  "neck",
];

/** Escaped as a browser would, or not at all. */
function inAddress(text: string, random: Random): string {
  return random.chance(0.9) ? encodeURIComponent(Buffer.from(text).toString()) : text.replace(/[\s#]/g, "");
}

function queryRequest(random: Random): InjectOptions {
  const path = random.pick(["/api/preview.wav", "/api/preview.wav", "/api/impulse.wav"]);
  const pairs = [`build=${inAddress(codeOf(random), random)}`, "rate=8000"];
  if (path === "/api/preview.wav") pairs.push("signal=click", `encoding=${random.pick(["pcm16", "pcm24", "float32"])}`);
  for (let n = random.chance(0.5) ? 0 : random.below(4); n > 0; n--) {
    const value = random.chance(0.2) ? mutateText(random.pick(QUERY_VALUES), random) : random.pick(QUERY_VALUES);
    pairs.push(`${inAddress(random.pick(QUERY_KEYS), random)}=${inAddress(value, random)}`);
  }
  const range = random.pick([
    "bytes=0-9",
    "bytes=-5",
    "bytes=5-",
    "bytes=9-1",
    "bytes=0-0,5-6",
    "bytes=99999999-",
    "x",
    "bytes=-",
  ]);
  return { method: "GET", url: `${path}?${pairs.join("&")}`, headers: random.chance(0.3) ? { range } : {} };
}

function linkRequest(random: Random): InjectOptions {
  const prefix = random.pick(["/b/", "/api/link/"]);
  return { method: "GET", url: prefix + inAddress(codeOf(random), random) };
}

const PATHS = [
  "/",
  "/index.html",
  "/built/page.js",
  "/api/scenarios",
  "/api/scenarios/long-cable",
  "/api/signals",
  "/api/catalogue",
  "/healthz",
];

function pathRequest(random: Random): InjectOptions {
  const spoilt = `/${mutateText(random.pick(PATHS), random).replace(/[\s#?]/g, "")}`;
  // What is no address at all never leaves the client that `inject` is.
  const url = URL.canParse(spoilt, "http://localhost")
    ? spoilt
    : `/${encodeURIComponent(Buffer.from(spoilt).toString())}`;
  return { method: random.pick(["GET", "GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS"] as const), url };
}

const SOUNDS = [
  pcm({ frames: 400 }),
  pcm({ bits: 8, frames: 301 }),
  pcm({ bits: 24, channels: 2, frames: 200 }),
  pcm({ bits: 32, frames: 100, sampleRateHz: 44_100 }),
].map((file, index) => {
  for (let at = 44; at < file.length; at++) file[at] = (at * (37 + index)) & 0x3f;
  return file;
});
const FLOATS = pcm({ bits: 32, frames: 200 });
FLOATS.writeUInt16LE(3, 20);
for (let at = 44; at < FLOATS.length; at += 4) FLOATS.writeFloatLE(Math.sin(at), at);

const BOUNDARY = "----fuzz";

function formOf(request: string, sound: Uint8Array): Buffer {
  const part = (head: string) => `--${BOUNDARY}\r\nContent-Disposition: form-data; ${head}\r\n\r\n`;
  return Buffer.concat([
    Buffer.from(`${part('name="request"')}${request}\r\n${part('name="signal"; filename="a.wav"')}`),
    sound,
    Buffer.from(`\r\n--${BOUNDARY}--\r\n`),
  ]);
}

function uploadRequest(random: Random): InjectOptions {
  const sound = random.pick([...SOUNDS, FLOATS]);
  const spoilt = random.chance(0.4)
    ? Buffer.concat([mutateBytes(sound.subarray(0, 44), random), sound.subarray(44)])
    : sound;
  const request = { build: PLAN, settings: { tone: random.below(11) }, encoding: random.pick(["pcm16", "float32"]) };
  const undone = { ...request, recordedWith: { build: PLAN, settings: { volume: random.below(11) } } };
  const text = JSON.stringify(random.chance(0.3) ? mutateJson(undone, random) : random.chance(0.5) ? undone : request);
  const whole = formOf(text, random.chance(0.3) ? mutateBytes(spoilt, random) : spoilt);
  const payload = random.chance(0.2) ? mutateBytes(whole, random) : whole;
  return {
    method: "POST",
    url: random.chance(0.95) ? "/api/preview" : "/api/previews",
    headers: {
      "content-type": `multipart/form-data; boundary=${random.chance(0.95) ? BOUNDARY : mutateText(BOUNDARY, random).replace(/[^\x20-\x7e]/g, "")}`,
    },
    payload,
  };
}

const KINDS = {
  body: bodyRequest,
  bytes: bytesRequest,
  anything: anythingRequest,
  query: queryRequest,
  link: linkRequest,
  path: pathRequest,
  upload: uploadRequest,
} as const;
const KIND_TICKETS = Object.entries({
  body: 40,
  bytes: 10,
  anything: 5,
  query: 12,
  link: 10,
  path: 5,
  upload: 18,
}).flatMap(([kind, count]) => Array<keyof typeof KINDS>(count).fill(kind as keyof typeof KINDS));

export interface FuzzRequest {
  readonly kind: keyof typeof KINDS;
  readonly options: InjectOptions;
}

export function requestFrom(random: Random): FuzzRequest {
  const kind = random.pick(KIND_TICKETS);
  return { kind, options: KINDS[kind](random) };
}
