import { describe, expect, test } from "vitest";
import type { PlanInput } from "../../src/build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../src/build-file/plans/presets.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings, type RawSettings } from "../../src/build-file/settings.ts";
import { topologyOf } from "./topology.ts";

/** What must be connected, position by position: the coils between tip and sleeve, then the tones that reach them. */
type Rows = Readonly<Record<string, readonly [signal: string, ...tones: string[]]>>;

const BRIDGE = "bridge.screw + bridge.slug";
const NECK = "neck.screw + neck.slug";
const BOTH = `(${BRIDGE}) ∥ (${NECK})`;

const NECK_AND_MIDDLE_TONES: Rows = {
  "lever 1": ["bridge"],
  "lever 2": ["bridge ∥ middle", "tone2"],
  "lever 3": ["middle", "tone2"],
  "lever 4": ["middle ∥ neck", "tone1", "tone2"],
  "lever 5": ["neck", "tone1"],
};

const MASTER_TONE: Rows = {
  "lever 1": ["bridge", "tone"],
  "lever 2": ["bridge ∥ middle", "tone"],
  "lever 3": ["middle", "tone"],
  "lever 4": ["middle ∥ neck", "tone"],
  "lever 5": ["neck", "tone"],
};

const TWO_TONES: Rows = {
  "toggle 1": [BRIDGE, "tone2"],
  "toggle 2": [BOTH, "tone1", "tone2"],
  "toggle 3": [NECK, "tone1"],
};

const ONE_TONE: Rows = { "toggle 1": [BRIDGE, "tone"], "toggle 2": [BOTH, "tone"], "toggle 3": [NECK, "tone"] };

const CUSTOMARY: Readonly<Record<string, Rows>> = {
  "singles-neck-middle": NECK_AND_MIDDLE_TONES,
  "singles-neck-bridge": {
    "lever 1": ["bridge", "tone2"],
    "lever 2": ["bridge ∥ middle", "tone2"],
    "lever 3": ["middle"],
    "lever 4": ["middle ∥ neck", "tone1"],
    "lever 5": ["neck", "tone1"],
  },
  "singles-bridge-shares": {
    "lever 1": ["bridge", "tone2"],
    "lever 2": ["bridge ∥ middle", "tone2"],
    "lever 3": ["middle", "tone2"],
    "lever 4": ["middle ∥ neck", "tone1", "tone2"],
    "lever 5": ["neck", "tone1"],
  },
  "singles-neck-middle-share": {
    "lever 1": ["bridge", "tone2"],
    "lever 2": ["bridge ∥ middle", "tone1", "tone2"],
    "lever 3": ["middle", "tone1"],
    "lever 4": ["middle ∥ neck", "tone1"],
    "lever 5": ["neck", "tone1"],
  },
  "singles-outer-share": {
    "lever 1": ["bridge", "tone1"],
    "lever 2": ["bridge ∥ middle", "tone1", "tone2"],
    "lever 3": ["middle", "tone2"],
    "lever 4": ["middle ∥ neck", "tone1", "tone2"],
    "lever 5": ["neck", "tone1"],
  },
  "singles-master-tone": MASTER_TONE,
  "singles-no-tone": {
    "lever 1": ["bridge"],
    "lever 2": ["bridge ∥ middle"],
    "lever 3": ["middle"],
    "lever 4": ["middle ∥ neck"],
    "lever 5": ["neck"],
  },
  "singles-shared-cap": NECK_AND_MIDDLE_TONES,
  "singles-after-volume": NECK_AND_MIDDLE_TONES,
  "singles-no-load": NECK_AND_MIDDLE_TONES,
  "singles-seven-sounds": {
    ...NECK_AND_MIDDLE_TONES,
    "lever 1, tone2.s up": ["bridge"],
    "lever 2, tone2.s up": ["bridge ∥ middle", "tone2"],
    "lever 3, tone2.s up": ["bridge ∥ middle", "tone2"],
    "lever 4, tone2.s up": ["bridge ∥ middle ∥ neck", "tone1", "tone2"],
    "lever 5, tone2.s up": ["bridge ∥ neck", "tone1"],
  },
  "singles-middle-phase": {
    ...NECK_AND_MIDDLE_TONES,
    "lever 1, tone1.s up": ["bridge"],
    "lever 2, tone1.s up": ["bridge ∥ -middle", "tone2"],
    "lever 3, tone1.s up": ["-middle", "tone2"],
    "lever 4, tone1.s up": ["-middle ∥ neck", "tone1", "tone2"],
    "lever 5, tone1.s up": ["neck", "tone1"],
  },
  "singles-series": {
    ...NECK_AND_MIDDLE_TONES,
    "lever 1, tone2.s up": ["bridge + neck"],
    "lever 2, tone2.s up": ["(bridge + neck) ∥ middle", "tone2"],
    "lever 3, tone2.s up": ["middle", "tone2"],
    "lever 4, tone2.s up": ["(bridge + neck) ∥ middle", "tone1", "tone2"],
    "lever 5, tone2.s up": ["bridge + neck", "tone1"],
  },
  "singles-three-way": { "lever 1": ["bridge"], "lever 2": ["middle", "tone2"], "lever 3": ["neck", "tone1"] },
  "hss-push-pull-split": {
    "lever 1": [BRIDGE, "tone2"],
    "lever 2": [`(${BRIDGE}) ∥ middle`, "tone1", "tone2"],
    "lever 3": ["middle", "tone1"],
    "lever 4": ["middle ∥ neck", "tone1"],
    "lever 5": ["neck", "tone1"],
    "lever 1, tone2.s up": ["bridge.slug", "tone2"],
    "lever 2, tone2.s up": ["bridge.slug ∥ middle", "tone1", "tone2"],
    "lever 3, tone2.s up": ["middle", "tone1"],
    "lever 4, tone2.s up": ["middle ∥ neck", "tone1"],
    "lever 5, tone2.s up": ["neck", "tone1"],
  },
  "hss-automatic-split": { ...MASTER_TONE, "lever 1": [BRIDGE, "tone"], "lever 2": ["bridge.slug ∥ middle", "tone"] },
  "hss-resistor": { ...MASTER_TONE, "lever 1": [BRIDGE, "tone"], "lever 2": [`(${BRIDGE}) ∥ middle`, "tone"] },
  "hsh-automatic-splits": {
    "lever 1": [BRIDGE, "tone2"],
    "lever 2": ["bridge.slug ∥ middle", "tone2"],
    "lever 3": ["middle"],
    "lever 4": ["middle ∥ neck.slug", "tone1"],
    "lever 5": [NECK, "tone1"],
  },
  "hsh-push-pull-splits": {
    "lever 1": [BRIDGE, "tone"],
    "lever 2": [`(${BRIDGE}) ∥ middle`, "tone"],
    "lever 3": ["middle", "tone"],
    "lever 4": [`middle ∥ (${NECK})`, "tone"],
    "lever 5": [NECK, "tone"],
    "lever 1, tone.s up": ["bridge.slug", "tone"],
    "lever 2, tone.s up": ["bridge.slug ∥ middle", "tone"],
    "lever 3, tone.s up": ["middle", "tone"],
    "lever 4, tone.s up": ["middle ∥ neck.slug", "tone"],
    "lever 5, tone.s up": ["neck.slug", "tone"],
  },
  "humbuckers-one-volume": ONE_TONE,
  "humbuckers-two-tones": TWO_TONES,
  "humbuckers-two-volumes": TWO_TONES,
  "humbuckers-after-volume": TWO_TONES,
  "humbuckers-independent": ONE_TONE,
  "humbuckers-many-sounds": {
    ...TWO_TONES,
    "toggle 1, tone2.s up": ["bridge.screw ∥ bridge.slug", "tone2"],
    "toggle 2, tone2.s up": [`bridge.screw ∥ bridge.slug ∥ (${NECK})`, "tone1", "tone2"],
    "toggle 3, tone2.s up": [NECK, "tone1"],
    "toggle 1, tone1.s up": [BRIDGE, "tone2"],
    "toggle 2, tone1.s up": [`(${BRIDGE}) ∥ (-neck.screw + -neck.slug)`, "tone1", "tone2"],
    "toggle 3, tone1.s up": ["-neck.screw + -neck.slug", "tone1"],
    "toggle 1, tone1.s up, tone2.s up": ["bridge.screw ∥ bridge.slug", "tone2"],
    "toggle 2, tone1.s up, tone2.s up": ["bridge.screw ∥ bridge.slug ∥ (-neck.screw + -neck.slug)", "tone1", "tone2"],
    "toggle 3, tone1.s up, tone2.s up": ["-neck.screw + -neck.slug", "tone1"],
  },
  "single-and-humbucker": {
    "lever 1": [BRIDGE, "tone"],
    "lever 2": [`(${BRIDGE}) ∥ neck`, "tone"],
    "lever 3": ["neck", "tone"],
    "lever 1, tone.s up": ["bridge.slug", "tone"],
    "lever 2, tone.s up": ["bridge.slug ∥ neck", "tone"],
    "lever 3, tone.s up": ["neck", "tone"],
  },
  "two-singles": {
    "lever 1": ["bridge", "tone"],
    "lever 2": ["bridge ∥ neck", "tone"],
    "lever 3": ["neck", "tone"],
    "lever 1, tone.s up": ["bridge + neck", "tone"],
    "lever 2, tone.s up": ["bridge + neck", "tone"],
    "lever 3, tone.s up": ["bridge + neck", "tone"],
  },
  "p90-pair": {
    "toggle 1": ["bridge", "tone2"],
    "toggle 2": ["bridge ∥ neck", "tone1", "tone2"],
    "toggle 3": ["neck", "tone1"],
  },
  "p90-pair-one-volume": {
    "toggle 1": ["bridge", "tone"],
    "toggle 2": ["bridge ∥ neck", "tone"],
    "toggle 3": ["neck", "tone"],
  },
  "one-humbucker": { "": [BRIDGE, "tone"], "volume.s up": ["bridge.screw ∥ bridge.slug", "tone"] },
  "one-p90": { "": ["bridge", "tone"] },
};

const H = "humbucker-medium";
const tones = (...pickups: string[]) => pickups.map((pickup) => ({ pot: "500k", cap: "22n", pickups: [pickup] }));

const UNUSUAL: Readonly<Record<string, { plan: PlanInput; rows: Rows }>> = {
  "a split that keeps the screw coil, on a switch of its own, beside a phase reversal of the same pickup": {
    plan: {
      layout: "lever-3-two-pickups",
      pickups: { neck: "single-vintage", bridge: H },
      volume: "500k",
      split: { pickup: "bridge", by: { switch: "splitter" }, keeps: "screw" },
      phase: { pickup: "bridge", by: "volume" },
    },
    rows: {
      "lever 1": [BRIDGE],
      "lever 2": [`(${BRIDGE}) ∥ neck`],
      "lever 3": ["neck"],
      "lever 1, splitter up": ["bridge.screw"],
      "lever 2, splitter up": ["bridge.screw ∥ neck"],
      "lever 3, splitter up": ["neck"],
      "lever 1, volume.s up": ["-bridge.screw + -bridge.slug"],
      "lever 2, volume.s up": ["(-bridge.screw + -bridge.slug) ∥ neck"],
      "lever 3, volume.s up": ["neck"],
      "lever 1, volume.s up, splitter up": ["-bridge.screw"],
      "lever 2, volume.s up, splitter up": ["-bridge.screw ∥ neck"],
      "lever 3, volume.s up, splitter up": ["neck"],
    },
  },
  "two humbuckers with two volumes, put in series by a push-pull": {
    plan: {
      layout: "toggle-3-two-volumes",
      pickups: { neck: "humbucker-vintage", bridge: "humbucker-vintage" },
      volume: "500k",
      tones: tones("neck", "bridge"),
      seriesLink: { pickups: ["bridge", "neck"], by: "volume2" },
    },
    rows: {
      "toggle 1": ["bridge", "tone2"],
      "toggle 2": ["bridge ∥ neck", "tone1", "tone2"],
      "toggle 3": ["neck", "tone1"],
      // The pair feeds both volumes at once, and with them both tones.
      "toggle 1, volume2.s up": ["bridge + neck", "tone1", "tone2"],
      "toggle 2, volume2.s up": ["bridge + neck", "tone1", "tone2"],
      "toggle 3, volume2.s up": ["bridge + neck", "tone1", "tone2"],
    },
  },
  "three humbuckers, one push-pull splitting two and another the third": {
    plan: {
      layout: "lever-5-two-tone",
      pickups: { neck: H, middle: H, bridge: H },
      volume: "500k",
      tones: tones("neck", "bridge"),
      split: [
        { pickup: "neck", by: "tone1" },
        { pickup: "bridge", by: "tone1", keeps: "screw" },
        { pickup: "middle", by: "tone2", keeps: "screw" },
      ],
      grounds: "star",
      trebleBleed: { capacitance: "1n", series: "100k" },
    },
    rows: {
      "lever 1": [BRIDGE, "tone2"],
      "lever 2": [`(${BRIDGE}) ∥ (middle.screw + middle.slug)`, "tone2"],
      "lever 3": ["middle.screw + middle.slug"],
      "lever 4": [`(middle.screw + middle.slug) ∥ (${NECK})`, "tone1"],
      "lever 5": [NECK, "tone1"],
      "lever 1, tone1.s up": ["bridge.screw", "tone2"],
      "lever 2, tone1.s up": ["bridge.screw ∥ (middle.screw + middle.slug)", "tone2"],
      "lever 3, tone1.s up": ["middle.screw + middle.slug"],
      "lever 4, tone1.s up": ["(middle.screw + middle.slug) ∥ neck.slug", "tone1"],
      "lever 5, tone1.s up": ["neck.slug", "tone1"],
      "lever 1, tone2.s up": [BRIDGE, "tone2"],
      "lever 2, tone2.s up": [`(${BRIDGE}) ∥ middle.screw`, "tone2"],
      "lever 3, tone2.s up": ["middle.screw"],
      "lever 4, tone2.s up": [`middle.screw ∥ (${NECK})`, "tone1"],
      "lever 5, tone2.s up": [NECK, "tone1"],
      "lever 2, tone1.s up, tone2.s up": ["bridge.screw ∥ middle.screw", "tone2"],
      "lever 1, tone1.s up, tone2.s up": ["bridge.screw", "tone2"],
      "lever 3, tone1.s up, tone2.s up": ["middle.screw"],
      "lever 4, tone1.s up, tone2.s up": ["middle.screw ∥ neck.slug", "tone1"],
      "lever 5, tone1.s up, tone2.s up": ["neck.slug", "tone1"],
    },
  },
};

function settingsOf(words: string): RawSettings {
  if (words === "") return {};
  const pairs = words.split(", ").map((word) => word.split(" ") as [string, string]);
  return Object.fromEntries(pairs.map(([control, value]) => [control, /^\d+$/.test(value) ? Number(value) : value]));
}

function check(plan: PlanInput, rows: Rows): void {
  const build = readBuild({ presolder: 1, plan });
  const controls = new Controls(build);
  const settingCount = controls.switches.reduce((count, control) => count * control.table.positions.length, 1);
  expect(Object.keys(rows).length, "rows, one for every state of the switches").toBe(settingCount);
  for (const [words, [signal, ...tonesReached]] of Object.entries(rows)) {
    const found = topologyOf(build, parseSettings(controls, settingsOf(words)));
    expect(found, words).toEqual({ signal, tones: tonesReached });
  }
}

describe("every position and push-pull connects what a technician expects (common practice, no source)", () => {
  test("the table has every customary plan", () => {
    expect(Object.keys(CUSTOMARY)).toEqual(PLAN_PRESETS.map((preset) => preset.id));
  });
  test.each(PLAN_PRESETS.map((preset) => preset.id))("%s", (id) => {
    check(PLAN_PRESETS.find((preset) => preset.id === id)!.plan, CUSTOMARY[id]!);
  });
  test.each(Object.keys(UNUSUAL))("%s", (name) => {
    check(UNUSUAL[name]!.plan, UNUSUAL[name]!.rows);
  });
});
