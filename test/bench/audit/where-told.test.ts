import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { auditBuild } from "../../../src/bench/audit/audit.ts";
import { switchStates, telling } from "../../../src/bench/audit/states.ts";
import type { PlanInput } from "../../../src/build-file/plans/plan-schema.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, rawSettings } from "../../../src/build-file/settings.ts";
import { effort } from "../../effort.ts";

const FOUR_PUSH_PULLS: PlanInput = {
  layout: "toggle-3-two-volumes",
  pickups: { neck: "humbucker-medium", bridge: "humbucker-medium" },
  volume: "500k",
  tones: ["neck", "bridge"].map((pickup) => ({ pot: "500k", cap: "22n", pickups: [pickup] })),
  independentVolumes: true,
  split: [
    { pickup: "neck", by: "tone1" },
    { pickup: "bridge", by: "tone2", keeps: "screw" },
  ],
  phase: { pickup: "neck", by: "volume1" },
  seriesLink: { pickups: ["bridge", "neck"], by: "volume2" },
};
const build = readBuild({ presolder: 1, plan: FOUR_PUSH_PULLS });
const found = auditBuild(build);

describe("where a finding bites", () => {
  test("is told by the switches that matter to it alone, however many there are", () => {
    const { message, settings } = found.find(({ code }) => code === "pair-out-of-phase")!;
    expect(message).toContain("with volume1.s up, volume2.s up; or toggle 2, volume1.s up: ");
    expect(settings).toEqual([
      { "volume1.s": "up", "volume2.s": "up" },
      { toggle: 2, "volume1.s": "up" },
    ]);
  });

  test("is every state among those meant and none of the others", () => {
    const controls = new Controls(build);
    const all = switchStates(controls, 1000);
    const raw = all.map((state) => rawSettings(controls, state));
    fc.assert(
      fc.property(fc.uniqueArray(fc.nat(all.length - 1), { minLength: 1, maxLength: all.length - 1 }), (chosen) => {
        const told = telling(
          controls,
          chosen.map((index) => all[index]!),
          all,
        );
        for (const [index, state] of raw.entries()) {
          const isTold = told.some((setting) =>
            Object.entries(setting).every(([name, value]) => state[name] === value),
          );
          expect(isTold).toBe(chosen.includes(index));
        }
      }),
      { numRuns: effort(40, 400) },
    );
  });
});

test("volumes that are independent are not told to be made so for what they do in series", () => {
  expect(found.map(({ code }) => code)).not.toContain("volumes-mute-each-other");
  const mute = auditBuild(readBuild({ presolder: 1, plan: { ...FOUR_PUSH_PULLS, independentVolumes: false } }));
  expect(mute.find(({ code }) => code === "volumes-mute-each-other")).toMatchObject({
    settings: [{ toggle: 2, "volume2.s": "down" }],
  });
});

test("a phase switch on a pickup that sounds alone is said to be right, and of no use", () => {
  const alone: PlanInput = {
    layout: "lever-3-two-tone",
    pickups: { neck: "single-vintage", middle: "single-vintage-rwrp", bridge: "humbucker-medium" },
    volume: "250k",
    tones: ["neck", "middle"].map((pickup) => ({ pot: "250k", cap: "22n", pickups: [pickup] })),
    phase: { pickup: "bridge", by: "volume" },
  };
  const idle = auditBuild(readBuild({ presolder: 1, plan: alone })).filter(({ code }) => code === "control-no-effect");
  expect(idle).toMatchObject([{ severity: "warning", message: expect.stringContaining("sounds beside no other") }]);
  expect(idle[0]!.remedy).toMatch(/^Its joints are right/);
});
