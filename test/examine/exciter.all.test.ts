import { describe, expect, it } from "vitest";
import { singleFaults } from "../../src/bench/faults/kinds/single-faults.ts";
import { mainPositions } from "../../src/bench/main-positions.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { examine } from "../../src/examine/examine.ts";
import { USUAL_RIG } from "../../src/examine/plan/plan.ts";
import { type Take, usedFrequencies } from "../../src/examine/takes/take.ts";
import { TONES_HZ } from "../../src/measure/signal/multitone.ts";
import { heardOf } from "./simulated-exciter.ts";
import { benchOf, seeded, sharesOf, soldered } from "./simulated-guard.ts";
import { trialGuards } from "./trial-guards.ts";

const FREQUENCIES_HZ = Float64Array.from(usedFrequencies(TONES_HZ), (index) => TONES_HZ[index]!);
const POSITIONS = [0, 2, 4];
const { build } = trialGuards.find(({ name }) => name === "three single coils, treble bleed")!;

/** Every position through the jack, and an exciter over each coil where it sounds. */
function answerTo(kind: string | undefined, lug: string, hasReference: boolean) {
  const random = seeded(8);
  const truth = singleFaults(build).find((fault) => fault.kind === kind && fault.lugs.includes(lug));
  const guard = soldered(build, truth?.edits ?? [], random);
  const bench = benchOf(47e3, random);
  const positions = mainPositions(new Controls(build)).map(({ settings }) => settings);
  const common = { frequenciesHz: FREQUENCIES_HZ };
  const atJack = POSITIONS.map((which) => positions[which]!).map(
    (settings): Take => ({
      ...common,
      settings,
      through: "jack",
      hasReference: true,
      ...sharesOf(guard, settings, FREQUENCIES_HZ, bench, random),
    }),
  );
  const exciter = { strength: 0.02, cornerHz: 3000, delaySeconds: hasReference ? 0 : 8e-6 };
  const laid = ["neck", "middle", "bridge"].flatMap((pickup, index) => {
    const through = { pickup, coil: "coil" };
    // Each sounds in two of the five, counted from the bridge.
    return [4 - 2 * index, index === 0 ? 3 : 1].map(
      (which): Take => ({
        ...common,
        settings: positions[which]!,
        through,
        hasReference,
        ...heardOf(guard, positions[which]!, through, exciter, FREQUENCIES_HZ, bench, random),
      }),
    );
  });
  const question = { rig: USUAL_RIG, takes: [...atJack, ...laid], readings: [] };
  return { truth, answer: examine(build, question, NO_CHECKPOINT) };
}

describe("an exciter over each coil", () => {
  it("shows a pickup whose leads are exchanged, which the jack alone cannot", () => {
    const { truth, answer } = answerTo("leads-swapped", "middle.hot", true);
    expect(answer.verdict).toBe("departs");
    expect(answer.departures[0]!.faults).toEqual([
      expect.objectContaining({ kind: "leads-swapped", lugs: truth!.lugs }),
    ]);
    expect(answer.departures[0]!.sameAs).toEqual([]);
  });

  it("calls a sound guard as drawn, recorded with or without what was played", () => {
    for (const hasReference of [true, false]) {
      const { answer } = answerTo(undefined, "", hasReference);
      expect(answer.verdict, answer.summary).toBe("as-drawn");
      expect(answer.takes.map(({ agrees }) => agrees)).toEqual(answer.takes.map(() => true));
    }
  });

  it("names two pickups that have changed places", () => {
    const { answer } = answerTo("pickups-swapped", "neck.hot", true);
    expect(answer.departures[0]!.faults[0]!.kind, answer.summary).toBe("pickups-swapped");
  });
});
