import { readBuild } from "../../src/build-file/read-build.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { scenarioBuilds } from "../bench/scenario-builds.ts";

const P90S = { neck: "p90", bridge: "p90" };
const HUMBUCKERS = { neck: "humbucker-medium", bridge: "humbucker-hot" };

/** Guards that no scenario holds: wide single coils, push-pulls that split and turn a phase, three single coils with a bleed. */
const PLANS = {
  "two P90s, two volumes": {
    layout: "toggle-3-two-volumes",
    pickups: P90S,
    volume: "500k",
    tones: [
      { pot: "500k", cap: "22n", pickups: ["neck"] },
      { pot: "500k", cap: "22n", pickups: ["bridge"] },
    ],
  },
  "one P90": { layout: "one-pickup", pickups: { bridge: "p90" }, volume: "500k", tones: [{ pot: "500k", cap: "22n" }] },
  "two humbuckers, push-pull splits": {
    layout: "toggle-3-one-volume",
    pickups: HUMBUCKERS,
    volume: "500k",
    tones: [{ pot: "500k", cap: "22n" }],
    split: [
      { pickup: "neck", by: "tone" },
      { pickup: "bridge", by: "tone" },
    ],
  },
  "three single coils, treble bleed": {
    layout: "lever-5-two-tone",
    pickups: { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "single-hot" },
    volume: "250k",
    tones: [
      { pot: "250k", cap: "22n", pickups: ["neck"] },
      { pot: "250k", cap: "22n", pickups: ["middle"] },
    ],
    trebleBleed: { capacitance: "680p", parallel: "150k" },
  },
};

/** One of every sort, so that any run of trials in a row takes in all of them. */
export const trialGuards: readonly { readonly name: string; readonly build: Build }[] = [
  ...scenarioBuilds,
  ...Object.entries(PLANS).map(([name, plan]) => ({ name, build: readBuild({ presolder: 1, plan }) })),
];
