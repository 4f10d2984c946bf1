import { expect, test } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { guardWords } from "../../../src/choice/buildable/words.ts";

test("a guard of the drawer is told by its layout, its parts, and what each switch does", () => {
  const plan = {
    layout: "lever-5-two-tone" as const,
    pickups: { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "humbucker-medium" },
    volume: { pot: 250e3, measured: 238e3 },
    tones: [
      { pot: 250e3, cap: 21.3e-9, pickups: ["neck", "middle"] },
      { pot: 250e3, cap: 22e-9, pickups: ["bridge"] },
    ],
    trebleBleed: { capacitance: 1e-9 },
    split: [{ pickup: "bridge", keeps: "screw", by: "tone2" }],
    phase: [{ pickup: "middle", by: { switch: "switch1" } }],
  };
  expect(guardWords(plan, readBuild({ presolder: 1, plan }))).toEqual([
    "Three pickups, five-position lever, one volume, two tones",
    "Neck: single coil, vintage wind; middle: single coil, vintage wind, reverse wound, reverse polarity; bridge: humbucker, medium wind, four conductors",
    "Volume 238k, upper tone 250k, lower tone 250k, tone cap 21.3 nF, tone cap 22 nF, treble bleed cap 1 nF",
    "Push-pull on the lower tone: splits the bridge, the screw coil stays",
    "Small switch 1: turns the middle's phase round",
  ]);
  const both = { ...plan, phase: [], alwaysOn: { pickup: "neck", by: "tone2" } };
  expect(guardWords(both, readBuild({ presolder: 1, plan: both })).slice(3)).toEqual([
    "Push-pull on the lower tone: splits the bridge, the screw coil stays; adds the neck to any position",
  ]);
});
