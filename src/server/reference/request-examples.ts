import type { jsonSchemaTransformObject } from "fastify-type-provider-zod";
import { pickupType } from "../../build-file/catalogue/pickup-types.ts";
import type { FileCalls, PostCalls } from "../../contract/calls.ts";

type OpenApiDocument = ReturnType<typeof jsonSchemaTransformObject>;

const BUILD = {
  presolder: 1,
  plan: {
    layout: "lever-5-two-tone",
    pickups: { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "humbucker-medium" },
    volume: "250k",
    tones: [
      { pot: "250k", cap: "22n", pickups: ["neck", "middle"] },
      { pot: "250k", cap: "22n", pickups: ["bridge"] },
    ],
  },
};
const FIVE_HUNDRED_K = { ...BUILD, plan: { ...BUILD.plan, volume: "500k" } };
const BRIDGE = { lever: 1, tone: 5 };

/** One pickup on a volume, wired by hand and without a spring claw. */
const BY_HAND: PostCalls["/api/recognise"]["request"]["build"] = {
  presolder: 1,
  parts: {
    bridge: { kind: "pickup", type: "p90", coils: { coil: pickupType("p90")!.coils.coil! } },
    volume: { kind: "pot", role: "volume", resistance: "500k", taper: "audio" },
    jack: { kind: "jack" },
  },
  wires: [
    ["bridge.hot", "volume.3"],
    ["volume.2", "jack.tip"],
    ["volume.1", "jack.sleeve"],
    ["volume.case", "jack.sleeve"],
    ["bridge.ground", "volume.case"],
  ],
};

type Examples = { readonly [Path in keyof PostCalls]: PostCalls[Path]["request"] } & FileCalls;

/** A request for every call that takes a body: small, but one that is answered. */
const EXAMPLES: Examples = {
  "/api/expand": { build: BUILD },
  "/api/link": { build: BUILD },
  "/api/response": { build: BUILD, settings: BRIDGE, frequencies: [100, 1000, 5000] },
  "/api/preview": { build: BUILD, settings: BRIDGE, signal: "strum", level: "matched", encoding: "pcm24" },
  "/api/previews": { build: BUILD, sweep: { tone: [0, 10] }, signal: "strum" },
  "/api/compare": { builds: [BUILD, FIVE_HUNDRED_K], settings: BRIDGE },
  "/api/tolerance": { build: BUILD, settings: BRIDGE },
  "/api/table": { build: BUILD, sweep: { lever: [1, 2, 3, 4, 5], tone: [0, 10] } },
  "/api/search": {
    build: BUILD,
    free: [{ part: "cap2", values: ["10n", "22n", "47n"] }],
    wish: { kind: "tone-halfway", settings: { lever: 1 } },
  },
  "/api/fit": {
    method: "resonances",
    resistance: "6k",
    readings: [
      { capacitance: "100p", frequency: "8k" },
      { capacitance: "470p", frequency: 5200 },
      { capacitance: "1n", frequency: 3900 },
    ],
  },
  "/api/bench": { build: BUILD, drawer: [{ part: { kind: "cap", capacitance: "47n" }, quantity: 2 }] },
  "/api/recognise": { build: BY_HAND },
  "/api/rewire": { from: BUILD, to: FIVE_HUNDRED_K },
  "/api/switch": {
    lugs: ["1", "2", "3", "4", "5", "6"].map((name, index) => ({
      name,
      spot: { x: index % 2, y: Math.floor(index / 2) },
    })),
    positions: 3,
    beeps: [
      { between: ["1", "3"], positions: [3] },
      { between: ["2", "4"], position: 2, beeps: true },
    ],
    build: BUILD,
    part: "lever",
  },
  "/api/diagnose": {
    build: BUILD,
    readings: [
      { between: ["jack.tip", "jack.sleeve"], settings: { lever: 5 }, ohms: null },
      { between: ["jack.tip", "jack.sleeve"], settings: { lever: 1 }, ohms: "8k" },
    ],
  },
};

export function addExamples(document: OpenApiDocument): OpenApiDocument {
  for (const [path, example] of Object.entries(EXAMPLES)) {
    const operation = document.paths?.[path]?.post as { requestBody?: { content: Record<string, object> } } | undefined;
    const content = operation?.requestBody?.content["application/json"];
    if (content) Object.assign(content, { example });
  }
  return document;
}
