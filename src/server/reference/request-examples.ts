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

const BY_HAND_PICKUP = { kind: "pickup", type: "p90", coils: { coil: pickupType("p90")!.coils.coil! } } as const;

/** One pickup on a volume, wired by hand and without a spring claw. */
const BY_HAND: PostCalls["/api/recognise"]["request"]["build"] = {
  presolder: 1,
  parts: {
    bridge: BY_HAND_PICKUP,
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

/** One pickup, two pots and some caps, one of them measured, and a price. */
const DRAWER: PostCalls["/api/buildable"]["request"]["drawer"] = {
  currency: "of mine",
  items: [
    { part: BY_HAND_PICKUP },
    { part: { kind: "pot", resistance: "500k", taper: "audio" }, count: 2 },
    { part: { kind: "cap", capacitance: "22n" }, count: 2, measured: ["21.3n"] },
    { part: { kind: "cap", capacitance: "47n" }, count: 0, price: 2.5 },
  ],
};

/** A control cavity and what was measured of the guard over it. */
const MEASURED: Omit<PostCalls["/api/room"]["request"], "build"> = {
  cavities: [
    {
      name: "control cavity",
      outline: [
        ["-60mm", "65mm"],
        ["85mm", "55mm"],
        ["145mm", "65mm"],
        ["145mm", "105mm"],
        ["75mm", "105mm"],
        ["-20mm", "130mm"],
        ["-60mm", "130mm"],
      ],
      depth: "40mm",
      for: ["volume", "tone1", "tone2", "lever"],
    },
  ],
  parts: {
    volume: { outline: "pot-24", depth: "27mm" },
    tone1: { outline: "pot-24", depth: "27mm" },
    tone2: { outline: "pot-17", depth: "24mm" },
    lever: { outline: { box: ["50mm", "16mm"] } },
    bridge: { outline: "humbucker-ring", poleSpacing: "50mm" },
  },
  strings: { nut: "36mm", bridge: "52mm" },
  guard: { thickness: "2.4mm", stack: "4mm" },
};
/** Two pickups alone, each lowered by a millimetre: softer by some 5 dB. */
const LEVELS: PostCalls["/api/heights"]["request"]["levels"] = [
  { heights: "now", settings: { lever: 1 }, strings: [-20.1, -20.6, -21.3, -19.8, -19.9, -20.4] },
  { heights: "now", settings: { lever: 5 }, strings: [-17.4, -17.9, -18.2, -17.2, -17.0, -17.3] },
  { heights: "low", settings: { lever: 1 }, strings: [-25.2, -25.5, -26.1, -24.9, -24.7, -25.5] },
  { heights: "low", settings: { lever: 5 }, strings: [-22.6, -22.8, -23.4, -22.1, -22.2, -22.3] },
];

const screwsAt = (bass: string, treble: string) => ({
  bass: { gap: bass, pitch: "0.8mm" },
  treble: { gap: treble, pitch: "0.8mm" },
});

type Examples = { readonly [Path in keyof PostCalls]: PostCalls[Path]["request"] } & FileCalls;

/** A request for every call that takes a body: small, but one that is answered. */
const EXAMPLES: Examples = {
  "/api/expand": { build: BUILD },
  "/api/link": { build: BUILD },
  "/api/shelf-link": {
    guards: [
      {
        id: "5f0c6c1e-6a1b-4c8e-9d55-0b6f3f6f2a11",
        name: "Guard B",
        guitar: "the blue one",
        state: "wired",
        made: "2026-03-01",
        changed: "2026-03-02T18:30:00.000Z",
        notes: "",
        readings: [],
        build: BUILD,
      },
    ],
  },
  "/api/response": { build: BUILD, settings: BRIDGE, frequencies: [100, 1000, 5000] },
  "/api/preview": {
    build: BUILD,
    settings: BRIDGE,
    signal: "strum",
    hand: "bright",
    listening: { chain: "clean", drive: 4 },
    level: "matched",
    encoding: "pcm24",
  },
  "/api/previews": { build: BUILD, sweep: { tone: [0, 10] }, signal: "strum" },
  "/api/compare": { builds: [BUILD, FIVE_HUNDRED_K], settings: BRIDGE },
  "/api/tolerance": { build: BUILD, settings: BRIDGE },
  "/api/table": { build: BUILD, sweep: { lever: [1, 2, 3, 4, 5], tone: [0, 10] } },
  "/api/search": {
    build: BUILD,
    free: [{ part: "cap2", values: ["10n", "22n", "47n"] }],
    wish: { kind: "tone-halfway", settings: { lever: 1 } },
  },
  "/api/wanted": {
    text: "glassy 4, hum-free 2",
    starts: ["singles-neck-middle"],
    pickups: { neck: ["single-vintage", "single-medium"], middle: ["single-vintage-rwrp"], bridge: ["single-hot"] },
    values: {
      volume: ["250k"],
      tone: ["250k"],
      cap: ["22n"],
      bleed: ["none", { capacitance: "680p", parallel: "150k" }],
    },
    switches: false,
  },
  "/api/wishes": { text: "glassy 4, fat bridge that cleans up, hum-free 2" },
  "/api/noise": { build: BUILD, hum: "60", field: { microtesla: 0.5 } },
  "/api/dielectrics": { build: BUILD },
  "/api/examine": { build: BUILD },
  "/api/taps": { build: BUILD },
  "/api/fit": {
    method: "resonances",
    resistance: "6k",
    readings: [
      { capacitance: "100p", frequency: "8k" },
      { capacitance: "470p", frequency: 5200 },
      { capacitance: "1n", frequency: 3900 },
    ],
  },
  "/api/bench": {
    build: BUILD,
    meter: "manual-2000",
    drawer: [{ part: { kind: "cap", capacitance: "47n" }, quantity: 2 }],
  },
  "/api/swap-card": { out: BUILD, in: FIVE_HUNDRED_K, how: { jack: "plug", claw: "plug" }, guitar: "the blue one" },
  "/api/recognise": { build: BY_HAND },
  "/api/heights": {
    build: BUILD,
    from: FIVE_HUNDRED_K,
    pickups: { neck: screwsAt("2.6mm", "2.4mm"), bridge: screwsAt("2.4mm", "2mm") },
    heights: {
      now: { neck: { bass: "2.6mm", treble: "2.4mm" }, bridge: { bass: "2.4mm", treble: "2mm" } },
      low: { neck: { bass: "3.6mm", treble: "3.4mm" }, bridge: { bass: "3.4mm", treble: "3mm" } },
    },
    levels: LEVELS,
    target: { reference: { lever: 1 } },
  },
  "/api/buildable": { drawer: DRAWER },
  "/api/heard-change": { build: BUILD, drawer: DRAWER },
  "/api/rewire": { from: BUILD, to: FIVE_HUNDRED_K },
  "/api/passport": {
    build: BUILD,
    guitar: "the blue one",
    date: "2026-03-01",
    noted: { "jack, lever 5": "5k9" },
    heights: { bridge: { bass: "2.4mm", treble: "2mm" } },
  },
  "/api/room": { build: BUILD, ...MEASURED },
  "/api/room/template": { build: BUILD, ...MEASURED, format: "svg" },
  "/api/leads": {
    leads: ["red", "white", "grey", "brown", "bare"],
    rows: ["screws", "slugs"],
    readings: [
      { between: ["red", "white"], ohms: "4k1" },
      { between: ["grey", "brown"], ohms: "4k15" },
      { between: ["red", "grey"], ohms: null },
    ],
    metal: [{ lead: "bare", ohms: 0.3 }],
    kicks: [{ row: "screws", between: ["red", "white"], kick: "up" }],
    compass: [{ row: "screws", draws: "north" }],
    build: BUILD,
    place: "bridge",
  },
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
      { between: ["jack.tip", "jack.sleeve"], settings: { lever: 3 }, ohms: "OL", range: "20k" },
    ],
    meter: { kind: "manual-2000", leads: "0.4" },
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
