import { describe, expect, it } from "vitest";
import type { Diagnosis } from "../../../src/bench/faults/diagnose.ts";
import { diagnose } from "../../../src/bench/faults/diagnose.ts";
import type { DiagnoseRequest, MeasuredReading } from "../../../src/bench/faults/diagnose-request.ts";
import type { Edit } from "../../../src/bench/faults/edits/edit.ts";
import { editBuild } from "../../../src/bench/faults/edits/edit-build.ts";
import { guardWiringOf } from "../../../src/bench/faults/kinds/guard-wiring.ts";
import { resistivePlaces } from "../../../src/bench/faults/kinds/resistive-joints.ts";
import { singleFaults } from "../../../src/bench/faults/kinds/single-faults.ts";
import { ReadingTaker } from "../../../src/bench/meter/reading-taker.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import type { Build } from "../../../src/build-file/schema.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";
import { scenarioBuilds } from "../scenario-builds.ts";
import { fiveReadings } from "./reliability.ts";

const JACK = ["jack.tip", "jack.sleeve"] as const;
const three = readBuild(threeSingles());
const twoVolumes = scenarioBuilds.find(({ name }) => name === "two-volumes")!.build;

function editsOf(build: Build, kind: string, lugs: string): readonly Edit[] {
  return singleFaults(build).find((each) => each.kind === kind && each.lugs.join() === lugs)!.edits;
}

/** Five readings at the jack of a guard with these changes, a percent high or low by turns, wandering by as much. */
function fiveOf(build: Build, edits: readonly Edit[]): MeasuredReading[] {
  const taker = new ReadingTaker(editBuild(build, edits), 20);
  return fiveReadings(build).map((plan, index) => {
    const { ohms, settings } = taker.take(plan);
    const shown = ohms === null ? null : ohms * (index % 2 === 0 ? 1.01 : 0.99);
    const wander = shown === null ? {} : { low: shown * 0.99, high: shown * 1.01 };
    return { between: JACK, settings, ohms: shown, ...wander };
  });
}

function ask(build: Build, edits: readonly Edit[], request: Omit<DiagnoseRequest, "readings"> = {}): Diagnosis {
  return diagnose(build, { readings: fiveOf(build, edits), ...request });
}

function namedFirst({ explanations: [first] }: Diagnosis): string[] {
  return [first!, ...first!.sameAs].map(({ faults }) =>
    faults
      .map(({ kind, lugs }) => `${kind} ${lugs}`)
      .sort()
      .join(" + "),
  );
}

describe("a broken coil and its open lead", () => {
  const edits = editsOf(three, "coil-open", "bridge.hot,bridge.ground");
  const silent = { symptoms: [{ code: "no-sound", settings: { lever: 1 } }] } as const;

  it.each([
    ["nothing is heard of", silent],
    ["nobody listened to", {}],
  ])("that %s are told together", (_, request) => {
    const named = namedFirst(ask(three, edits, request));
    expect(named).toContain("coil-open bridge.hot,bridge.ground");
    expect(named).toContain("wire-open bridge.hot,lever.A1");
    expect(named).toContain("wire-open bridge.ground,volume.case");
  });

  it("stand in the order of the joints' age: new ones before the coil, and old ones after it", () => {
    const kindFirst = (joints: "new" | "old") => namedFirst(ask(three, edits, { ...silent, joints }))[0]!.split(" ")[0];
    expect(kindFirst("new")).toBe("wire-open");
    expect(kindFirst("old")).toBe("coil-open");
  });
});

describe("a part of a wrong value", () => {
  it("is told with what sounds the same: a tone pot a tenth of its value, a shorted one, one that works backwards", () => {
    const edits = [{ edit: "resistance", part: "tone1", gang: 0, factor: 0.1 }] as const;
    const symptoms = [3, 4, 5].map((lever) => ({ code: "dark", settings: { lever } }) as const);
    const named = namedFirst(ask(three, edits, { symptoms: symptoms.slice(1) }));
    expect(named).toContain("wrong-pot-value tone1.1,tone1.3");
    expect(named).toContain("lugs-shorted tone1.1,tone1.2");
  });

  it("is half a humbucker's coil with shorted turns, though another pot would read nearly so", () => {
    const edits = [{ edit: "coil-resistance", part: "neck", coil: "slug", factor: 0.5 }] as const;
    expect(namedFirst(ask(twoVolumes, edits))).toContain("coil-value neck.hot,neck.ground");
  });
});

describe("a cold joint of 160 Ω", () => {
  const places = resistivePlaces(guardWiringOf(twoVolumes));
  const at = places.find((place) => place.unseen[0]!.lugs.join() === "toggle.A0,jack.tip")!;

  it("in the way of coils of 8 and 14 kΩ is lost among tolerances: nothing else is blamed, and it is named", () => {
    const answer = ask(twoVolumes, [at.edit(160)]);
    expect(namedFirst(answer)).toContain("none ");
    expect(namedFirst(answer)).toContain("joint-resistive toggle.A0,jack.tip");
  });

  it("of 3 kΩ there is found, and how much it is", () => {
    const answer = ask(twoVolumes, [at.edit(3000)]);
    expect(namedFirst(answer)).toContain("joint-resistive toggle.A0,jack.tip");
    expect(Math.abs(Math.log(answer.explanations[0]!.faults[0]!.ohms! / 3000))).toBeLessThan(0.1);
  });
});

describe("two faults of which one only sounds", () => {
  const broken = editsOf(three, "coil-open", "neck.hot,neck.ground");

  it("are named together, and not as certain: a broken coil and a tone lead off", () => {
    const answer = ask(three, [...broken, ...editsOf(three, "wire-open", "lever.B2,tone2.2")], {
      symptoms: [
        { code: "tone-no-effect", settings: { lever: 3 }, control: "tone2" },
        { code: "no-sound", settings: { lever: 5 } },
      ],
    });
    expect(namedFirst(answer)).toContain("coil-open neck.hot,neck.ground + wire-open lever.B2,tone2.2");
    expect(answer.explanations[0]!.probability).toBeLessThan(0.9);
  });

  it("of which the other shows in nothing told leave room for it", () => {
    const { remainder, explanations } = ask(three, broken);
    const told = explanations.reduce((sum, { probability }) => sum + probability, 0);
    expect(told + remainder.probability).toBeCloseTo(1, 6);
    expect(remainder.probability).toBeGreaterThan(0.1);
    expect(remainder.message).toMatch(/a second fault that shows in nothing measured or told \(\d+ %\)/);
  });
});

describe("a poor fit", () => {
  it("is never sure of itself: the worse it fits, the more is left for what was not weighed", () => {
    const readings = fiveOf(three, editsOf(three, "wire-open", "neck.hot,lever.A3"));
    const off = (share: number) =>
      readings.map((each, index) => {
        if (index !== 0) return each;
        const ohms = (each.ohms as number) * share;
        return { ...each, ohms, low: ohms * 0.99, high: ohms * 1.01 };
      });
    const left = [1, 1.05, 1.08].map((share) => diagnose(three, { readings: off(share) }));
    const fits = left.map(({ explanations: [first] }) => first!.fit);
    const rests = left.map(({ remainder }) => remainder.probability);
    expect(fits[2]).toBeLessThan(fits[0]!);
    expect(rests[2]).toBeGreaterThanOrEqual(rests[0]!);
    for (const { explanations } of left) expect(explanations[0]!.probability).toBeLessThan(0.95);
  });
});

describe("the end of a pot's track", () => {
  const one = readBuild(onePickup());
  const atZero = (ohms: number) =>
    namedFirst(
      diagnose(one, {
        readings: [
          { between: JACK, ohms: 5850 },
          { between: JACK, settings: { volume: 0 }, ohms },
        ],
      }),
    );

  it.each([0.3, 5, 40, 160, 1200, 2400])("that reads %f Ω is that of a sound guard", (ohms) => {
    expect(atZero(ohms)).toContain("none ");
  });

  it("that reads 8 kΩ leaks, or its lug's joint is cold", () => {
    const named = atZero(8000);
    expect(named).not.toContain("none ");
    expect(named).toContain("pot-end-leaks volume.1");
    expect(named).toContain("joint-resistive volume.1,volume.case");
  });
});

describe("a pickup's ground lead on another's hot lug: two pickups in series", () => {
  const coil = { resistance: "6k", inductance: "2.4H" };
  const pickup = { kind: "pickup", coils: { coil } };
  const guard = (type: string) =>
    readBuild(
      threeSingles({ parts: { neck: pickup, middle: pickup, bridge: pickup, lever: { kind: "switch", type } } }),
    );
  const at = (readings: readonly Partial<MeasuredReading>[]) =>
    readings.map((each, index): MeasuredReading => ({ between: JACK, settings: { lever: index + 1 }, ...each }));

  it("is found on a five-position lever: 5.9 k, 3.9 k, 11.5 k, 5.9 k, 5.9 k", () => {
    const answer = diagnose(guard("lever-5"), {
      readings: at([5860, 3870, 11450, 5860, 5860].map((ohms) => ({ ohms }))),
    });
    expect(namedFirst(answer)).toContain("lead-on-wrong-net middle.ground,volume.case,lever.A3");
    expect(answer.explanations[0]!.probability).toBeGreaterThan(0.5);
  });

  it("is found beside a neck pickup that is off, where a lever joins one at a time: 5.9 k, 12 k, over the range", () => {
    const answer = diagnose(guard("lever-3"), { readings: at([{ ohms: 5900 }, { ohms: 12000 }, { above: 20e3 }]) });
    const all = answer.explanations
      .slice(0, 3)
      .flatMap(({ faults, sameAs }) => [faults, ...sameAs.map((each) => each.faults)]);
    const named = all.map((faults) => faults.map(({ kind, lugs }) => `${kind} ${lugs}`));
    const isMeant = (each: string[]) =>
      each.includes("lead-on-wrong-net middle.ground,volume.case,lever.A1") &&
      each.includes("wire-open neck.hot,lever.A3");
    expect(named.some(isMeant)).toBe(true);
  });

  it("cannot read 5.9 k, then 12 k, on a lever whose second position only adds to the first: so it is told", () => {
    const answer = diagnose(guard("lever-5"), { readings: at([{ ohms: 5900 }, { ohms: 12000 }, { ohms: null }]) });
    expect(answer.explanations[0]!.faults).toEqual([{ kind: "unexplained", lugs: [] }]);
    expect(answer.summary).toMatch(/two things or more are wrong, or a reading is/);
  });
});

describe("what is read by a person", () => {
  it("names readings by their labels, and parts without a slip of grammar", () => {
    const readings = fiveOf(twoVolumes, [{ edit: "coil-open", part: "bridge", coil: "slug" }]).map((each, index) => ({
      ...each,
      label: `my reading ${index + 1}`,
    }));
    const { summary, explanations } = diagnose(twoVolumes, { readings });
    expect(summary).toMatch(/my reading \d shows .* where a sound guard shows/);
    const texts = explanations.flatMap(({ message, sameAs }) => [message, ...sameAs.map((each) => each.message)]);
    expect(texts.join(" ")).toMatch(/the slug coil of the bridge humbucker/);
    for (const text of [summary, ...texts]) {
      expect(text).not.toMatch(/readings\.\d/);
      expect(text).not.toMatch(/wind's|: humbucker/);
    }
  });

  it("states how common each explanation is, and that this is common practice", () => {
    const { explanations, priors } = ask(three, []);
    expect(priors).toMatch(/common practice, no source/);
    for (const { prior } of explanations) {
      expect(prior).toBeGreaterThan(0);
      expect(prior).toBeLessThan(1);
    }
  });
});
