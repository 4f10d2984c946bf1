import { describe, expect, test } from "vitest";
import type { PlanInput } from "../../../src/build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { withControl } from "../../../src/build-file/settings.ts";
import { flatDrive } from "../../../src/choice/drive.ts";
import { curveFor, featuresFor, Guard } from "../../../src/choice/guard.ts";
import { parseWishes } from "../../../src/choice/wanted/parse-wishes.ts";
import type { Values } from "../../../src/choice/wanted/space/values.ts";
import { searchWanted } from "../../../src/choice/wanted/wanted.ts";
import { wantedTold } from "../../../src/choice/wanted/wanted-answer.ts";
import type { WantedQuestion } from "../../../src/choice/wanted/wanted-question.ts";

const SURROUNDINGS = { cable: { length: "3m", capacitance: "100p" } };
const start = (id: string) => {
  const { title, plan } = PLAN_PRESETS.find((preset) => preset.id === id)!;
  return { from: title, plan, changes: [] };
};

const VALUES: Values = {
  volume: [250e3, 500e3],
  tone: [250e3, 500e3],
  cap: [22e-9],
  bleed: [null, { capacitance: 664e-12, parallel: 150e3 }],
};

function question(text: string, more: Partial<WantedQuestion>): WantedQuestion {
  return {
    wishes: parseWishes(text).wishes,
    values: VALUES,
    surroundings: SURROUNDINGS,
    driveOf: () => flatDrive(),
    starts: [start("singles-neck-middle"), start("hss-automatic-split")],
    pickups: {
      neck: ["single-vintage"],
      middle: ["single-vintage-rwrp", "single-hot-rwrp"],
      bridge: ["single-hot", "humbucker-hot", "humbucker-vintage"],
    },
    steps: false,
    ...more,
  };
}

const octaves = (low: number, value: number) => Math.max(0, 3 * Math.log2(low / value));
const steps = (missing: number, step: number) => Math.max(0, missing / step);

/** "Glassy 4, cleans up 1" of one plan, every figure from the curve itself: peak by `features`, levels at the dials by the curve. */
function costOf(plan: PlanInput): number {
  const guard = new Guard(readBuild({ presolder: 1, plan, ...SURROUNDINGS }));
  const { controls } = guard;
  const at = (lever: number, volume: number) =>
    guard.transfers(withControl(controls, withControl(controls, controls.atRest, "lever", lever), "volume", volume));
  const { peak } = featuresFor(at(4, 10));
  const glassy = peak
    ? octaves(4000, peak.frequency) ** 2 + octaves(peak.frequency, 7500) ** 2 + steps(4 - peak.level, 3) ** 2
    : 64 + (4 / 3) ** 2;
  const level = (volume: number) => curveFor(at(1, volume), Float64Array.of(200))[0]!;
  // The mean energy of the ear's bands from 2 to 5 kHz, here by 400 points spaced as ERB numbers are.
  const cam = (hz: number) => 21.366 * Math.log10(0.004368 * hz + 1);
  const [low, high] = [cam(2000), cam(5000)];
  const points = Float64Array.from({ length: 400 }, (_, k) => {
    const c = low + ((k + 0.5) / 400) * (high - low);
    return (10 ** (c / 21.366) - 1) / 0.004368;
  });
  const treble = (volume: number) => {
    const curve = curveFor(at(1, volume), points);
    return 10 * Math.log10(curve.reduce((sum, db) => sum + 10 ** (db / 10), 0) / points.length);
  };
  const fall = level(6) - level(10);
  const kept = treble(6) - level(6) - (treble(10) - level(10));
  return glassy + steps(fall + 5, 3) ** 2 + steps(-1 - kept, 2) ** 2;
}

function everyPlan(): PlanInput[] {
  return ["singles-neck-middle", "hss-automatic-split"].flatMap((id) =>
    ["single-vintage-rwrp", "single-hot-rwrp"].flatMap((middle) =>
      ["single-hot", "humbucker-hot", "humbucker-vintage"].flatMap((bridge) =>
        ["250k", "500k"].flatMap((volume) =>
          ["250k", "500k"].flatMap((pot) =>
            [undefined, { capacitance: "664p", parallel: "150k" }].map((trebleBleed): PlanInput => {
              const { plan } = start(id);
              const tones = (plan.tones ?? []).map((tone) => ({ ...tone, pot }));
              return {
                ...plan,
                pickups: { neck: "single-vintage", middle, bridge },
                ...{ volume, tones },
                ...(trebleBleed ? { trebleBleed } : {}),
              };
            }),
          ),
        ),
      ),
    ),
  );
}

describe("a search over layouts and parts that tries everything", () => {
  const result = searchWanted(question("glassy 4, cleans up 1", {}), undefined, { enough: Number.POSITIVE_INFINITY });
  const told = wantedTold(result, parseWishes("glassy 4, cleans up 1").wishes, SURROUNDINGS);
  // Only what has four leads can be split, so that no HSS wiring with anything else can be had.
  const canBe = everyPlan().filter(({ split, pickups }) => !split || pickups.bridge === "humbucker-hot");

  test("tries every guard that can be wired, and says so", () => {
    expect(canBe).toHaveLength(64);
    expect(result).toMatchObject({ exhaustive: true, trials: 64, shapes: { all: 12, without: 0, stepped: 0 } });
    expect(told.method).toContain("All values of all of them were tried");
  });

  test("finds the best that loops over every plan find, with the same cost", () => {
    const costs = canBe.map(costOf).sort((a, b) => a - b);
    // The bands' edges against a continuous integral: some hundredths of a step.
    expect(result.ranked[0]!.outcome.cost).toBeCloseTo(costs[0]!, 1);
    const best = told.guards[0]!;
    expect(costOf(best.build.plan)).toBeCloseTo(costs[0]!, 6);
  });

  test("the plan that is given measures as the guard that was tried, for all that are told", () => {
    for (const { build, cost } of told.guards) expect(costOf(build.plan)).toBeCloseTo(cost, 1);
  });
});

describe("a search that may not try everything", () => {
  const text = "glassy 4, cleans up 1";
  const all = searchWanted(question(text, {}), undefined, { enough: Number.POSITIVE_INFINITY });

  test("says so, keeps to its bounds, and comes near the best", () => {
    const some = searchWanted(question(text, {}), undefined, {
      mostShapes: 8,
      mostTrials: 40,
      enough: Number.POSITIVE_INFINITY,
    });
    expect(some.exhaustive).toBe(false);
    expect(some.trials).toBeLessThanOrEqual(40);
    expect(some.shapes.tried).toBeLessThanOrEqual(8);
    expect(some.ranked[0]!.outcome.cost).toBeGreaterThanOrEqual(all.ranked[0]!.outcome.cost - 1e-9);
    expect(some.ranked[0]!.outcome.cost).toBeLessThan(all.ranked[0]!.outcome.cost + 1);
  });

  test("can be stopped on its way", () => {
    let calls = 0;
    const checkpoint = () => {
      if (++calls === 5) throw new Error("nobody waits any more");
    };
    expect(() => searchWanted(question(text, {}), { checkpoint })).toThrow("nobody waits any more");
  });
});

describe("switches added to the best", () => {
  test("bring a sound that no guard begun with has", () => {
    const wanted = { starts: [start("singles-no-tone")], pickups: {}, values: { ...VALUES, bleed: [null] } };
    // Bridge and neck together: a lever of five positions never has them, a push-pull does.
    const without = searchWanted(question("quacky bridge+neck", wanted));
    expect(without.ranked[0]!.outcome.wishes[0]!.cell).toBeNull();
    const stepped = searchWanted(question("quacky bridge+neck", { ...wanted, steps: true }));
    expect(stepped.ranked[0]!.outcome.wishes[0]).toMatchObject({ met: true });
    expect(stepped.ranked[0]!.candidate.shape.changes.join()).toMatch(/added/);
    expect(stepped.shapes.stepped).toBeGreaterThan(0);
  });
});

describe("guards that lack what is wished for", () => {
  test("are left out by name of the place, and where all do the search is refused", () => {
    const some = searchWanted(
      question("glassy 4", { starts: [start("singles-no-tone"), start("singles-three-way")], pickups: {} }),
      undefined,
      { mostTrials: 20 },
    );
    expect(some.shapes.without).toBe(1);
    expect(() => searchWanted(question("glassy 4", { starts: [start("singles-three-way")] }))).toThrow(
      /none of them has position 4; they have positions 1 to 3/,
    );
  });
});
