import { describe, expect, it } from "vitest";
import { diagnose } from "../../../src/bench/faults/diagnose.ts";
import type { MeasuredReading } from "../../../src/bench/faults/diagnose-request.ts";
import { editBuild } from "../../../src/bench/faults/edits/edit-build.ts";
import { judge } from "../../../src/bench/faults/judge.ts";
import { singleFaults } from "../../../src/bench/faults/kinds/single-faults.ts";
import { ReadingTaker } from "../../../src/bench/meter/reading-taker.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { hssWithBleed, onePickup, threeSingles } from "../../fixtures/circuits.ts";
import { withIdealPots } from "../../ideal-pots.ts";
import { measured, seeded } from "./blind-trials.ts";

const JACK = ["jack.tip", "jack.sleeve"] as const;
const one = withIdealPots(readBuild(onePickup()));
const three = withIdealPots(readBuild(threeSingles()));

const positions = (...ohms: number[]): MeasuredReading[] =>
  ohms.map((each, index) => ({ between: JACK, settings: { lever: index + 1 }, ohms: each }));

function best(build: Build, readings: readonly MeasuredReading[]) {
  const [first] = diagnose(build, { readings }).explanations;
  return first!;
}

/** The guard with one winding of another resistance, whatever else it is. */
function rewound(build: Build, part: string, coil: string, factor: number): Build {
  return editBuild(build, [{ edit: "coil-resistance", part, coil, factor }]);
}

describe("a part whose value is not the build's", () => {
  // By hand: reading = coil · pot / (coil + pot), so coil = reading · pot / (pot − reading) with a pot of 250 kΩ.
  it.each([
    [2930, 2964.7],
    [9000, 9336.1],
    [4000, 4065],
  ])("is the first explanation of %f Ω at the jack of a 6 kΩ coil, solved to %f Ω", (ohms, coil) => {
    const { faults, fit, probability, message } = best(one, [{ between: JACK, ohms }]);
    expect(faults[0]).toMatchObject({ kind: "coil-value", lugs: ["pickup.hot", "pickup.ground"] });
    expect(Math.abs(Math.log(faults[0]!.ohms! / coil))).toBeLessThan(0.01);
    expect(fit).toBeGreaterThan(0.9);
    expect(probability).toBeGreaterThan(0.3);
    expect(message).toContain("in place of 6 kΩ");
  });

  it("is found from all standing readings of a guard whose neck coil has shorted turns", () => {
    const readings = measured(three, rewound(three, "neck", "coil", 3000 / 5900), seeded(3));
    const { faults, fit } = best(three, readings);
    expect(faults[0]).toMatchObject({ kind: "coil-value", lugs: ["neck.hot", "neck.ground"] });
    expect(Math.abs(Math.log(faults[0]!.ohms! / 3000))).toBeLessThan(0.02);
    expect(fit).toBeGreaterThan(0.01);
  });

  it("may be one coil of a humbucker, a pot of no usual value, or a resistor", () => {
    const hss = readBuild(hssWithBleed());
    const named = (guard: Build) => {
      const first = best(hss, measured(hss, guard, seeded(5)));
      return [first, ...first.sameAs].map(({ faults }) => `${faults[0]!.kind} ${faults[0]!.lugs}`);
    };
    expect(named(rewound(hss, "bridge", "slug", 0.5))).toContain("coil-value bridge.slug.start,bridge.slug.finish");
    const worn = editBuild(hss, [{ edit: "resistance", part: "volume", gang: 0, factor: 0.65 }]);
    expect(named(worn)).toContain("pot-value volume.1,volume.3");
    const misread = editBuild(hss, [{ edit: "resistance", part: "bleedR", gang: 0, factor: 0.1 }]);
    expect(named(misread)).toContain("resistor-value bleedR.a,bleedR.b");
  });

  it.each([
    [5542, true],
    [5859, true],
    [6170, true],
    [5300, false],
    [6400, false],
    [2930, false],
    [9000, false],
    [120e3, false],
  ])("at %f Ω is nothing wrong only within tolerances and the meter's error: %s", (ohms, isSound) => {
    expect(best(one, [{ between: JACK, ohms }]).faults[0]!.kind === "none").toBe(isSound);
  });
});

describe("readings that nothing explains", () => {
  const clash = [0, 5860].map((ohms): MeasuredReading => ({ between: JACK, ohms }));

  it("that contradict each other are named, and nothing is called sound", () => {
    const { explanations } = diagnose(one, { readings: clash });
    expect(explanations[0]!.faults).toEqual([{ kind: "unexplained", lugs: [] }]);
    expect(explanations[0]!.message).toContain("contradict each other: the jack (0 Ω, then 5.86 kΩ)");
    for (const { fit } of explanations) expect(fit).toBeLessThan(1e-3);
  });

  it("have the odd one among them named", () => {
    const { explanations } = diagnose(three, { readings: positions(6620, 3185, 6145, 2975, 57650) });
    expect(explanations[0]!.faults).toEqual([{ kind: "unexplained", lugs: [] }]);
    expect(explanations[0]!.message).toContain("the oddest first: the jack, lever 5 (57.6 kΩ).");
    for (const { fit } of explanations) expect(fit).toBeLessThan(1e-3);
  });
});

describe("a part of another value beside a second fault", () => {
  const named = (edits: Parameters<typeof editBuild>[1]) => {
    const { explanations } = diagnose(three, { readings: measured(three, editBuild(three, edits), seeded(1)) });
    return [explanations[0]!, ...explanations[0]!.sameAs].map(({ faults }) =>
      faults
        .map(({ kind, lugs }) => `${kind} ${lugs}`)
        .sort()
        .join(" and "),
    );
  };
  const shortNeck = { edit: "coil-resistance", part: "neck", coil: "coil", factor: 0.5 } as const;

  it("is found where two pickups are others than the build's", () => {
    const bridge = { edit: "coil-resistance", part: "bridge", coil: "coil", factor: 1.5 } as const;
    expect(named([shortNeck, bridge])).toContain(
      "coil-value bridge.hot,bridge.ground and coil-value neck.hot,neck.ground",
    );
  });

  it("is found where a lead of another pickup is open", () => {
    const open = singleFaults(three).find(({ kind, lugs }) => kind === "wire-open" && lugs[0] === "bridge.hot")!;
    expect(named([{ ...shortNeck, factor: 0.35 }, ...open.edits])).toContain(
      "coil-value neck.hot,neck.ground and wire-open bridge.hot,lever.A1",
    );
  });
});

describe("exchanged wires and pickups", () => {
  it("are found where the neck and bridge leads changed places on the lever", () => {
    const guard = editBuild(three, singleFaults(three).find(({ kind }) => kind === "pickups-swapped")!.edits);
    expect(guard.wires).not.toEqual(three.wires);
    const taker = new ReadingTaker(three, 20);
    const sound = judge(three, { readings: positions(1, 1, 1, 1, 1) }).plans.map((plan) => taker.take(plan).ohms!);
    const [bridge, both, middle, neckBoth, neck] = sound as [number, number, number, number, number];
    const { faults, sameAs, fit } = best(three, positions(neck, neckBoth, middle, both, bridge));
    const named = [{ faults }, ...sameAs].map((each) => `${each.faults[0]!.kind} ${each.faults[0]!.lugs}`);
    expect(named).toContain("switch-wires-swapped lever.A1,lever.A3");
    expect(named).toContain("pickups-swapped neck.hot,bridge.hot");
    expect(fit).toBeGreaterThan(0.99);
  });
});

describe("what an explanation says", () => {
  it.each<[string, Build, MeasuredReading[]]>([
    ["two wires exchanged", three, positions(5765, 2975, 6145, 3185, 6620)],
    ["a short neck coil", three, positions(6620, 3185, 6145, 2030, 2965)],
    ["an open lead", three, positions(6620, 3185, 6145, 6145, 250e3)],
    ["a contradiction", one, [0, 5860].map((ohms) => ({ between: JACK, ohms }))],
    ["a reading far off", one, [{ between: JACK, ohms: 9000 }]],
  ])("is what its predictions come from, rebuilt and measured anew: %s", (_, build, readings) => {
    const { groups, plans } = judge(build, { readings });
    for (const { members } of groups.slice(0, 10)) {
      for (const { faults, prediction } of members) {
        const edits = faults.flatMap((fault) => fault.edits);
        const taker = new ReadingTaker(editBuild(build, edits), 20);
        for (const [index, plan] of plans.entries()) {
          const ohms = taker.take(plan).ohms ?? Number.POSITIVE_INFINITY;
          const predicted = prediction.ohms[index]!;
          // A broken or shorted coil keeps a teraohm or a milliohm in a build, which knows none without.
          if (ohms > 1e9) expect(predicted).toBe(Number.POSITIVE_INFINITY);
          else expect(Math.abs(ohms - predicted)).toBeLessThan(0.01 + 1e-6 * ohms);
        }
      }
    }
  });

  it("fits the readings where its fit is high: each is within tolerances of what it predicts", () => {
    const readings = positions(5765, 2975, 6145, 3185, 6620);
    const fitting = diagnose(three, { readings }).explanations.filter(({ fit }) => fit >= 0.01);
    expect(fitting.length).toBeGreaterThan(0);
    for (const { predicted } of fitting) {
      for (const [index, ohms] of predicted.entries())
        expect(Math.abs(Math.log(ohms! / (readings[index]!.ohms as number)))).toBeLessThan(0.2);
    }
  });
});

describe("nothing to go by", () => {
  it("is said so, with the measurement to begin with", () => {
    const { explanations, nextMeasurement } = diagnose(three, { readings: [] });
    expect(explanations.map(({ faults }) => faults[0]!.kind)).toEqual(["nothing-measured"]);
    expect(nextMeasurement).toMatchObject({ kind: "meter" });
  });
});
