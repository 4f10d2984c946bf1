import { describe, expect, it } from "vitest";
import { editBuild } from "../../src/bench/faults/edits/edit-build.ts";
import { singleFaults } from "../../src/bench/faults/kinds/single-faults.ts";
import { mainPositions } from "../../src/bench/main-positions.ts";
import { partsOfKind } from "../../src/build-file/parts-of-kind.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { examine } from "../../src/examine/examine.ts";
import { USUAL_RIG } from "../../src/examine/plan/plan.ts";
import { type Take, usedFrequencies } from "../../src/examine/takes/take.ts";
import type { Subject } from "../../src/examine/weigh/evidence.ts";
import { TapEvidence } from "../../src/examine/weigh/tap-evidence.ts";
import { TONES_HZ } from "../../src/measure/signal/multitone.ts";
import { USUAL_TAP_INPUT } from "../../src/measure/taps/tap-transfers.ts";
import { thoroughly } from "../effort.ts";
import { heardOf } from "../measure/taps/tap-trials.ts";
import { benchOf, seeded, sharesOf, soldered } from "./simulated-guard.ts";
import { trialGuards } from "./trial-guards.ts";

const FREQUENCIES_HZ = Float64Array.from(usedFrequencies(TONES_HZ), (index) => TONES_HZ[index]!);
const { build } = trialGuards.find(({ name }) => name === "three single coils, treble bleed")!;

/** Two positions through the jack, with or without a take of taps. */
function answerTo(kind: string | undefined, lug: string, isTapped: boolean) {
  const random = seeded(8);
  const truth = singleFaults(build).find((fault) => fault.kind === kind && fault.lugs.includes(lug));
  const guard = soldered(build, truth?.edits ?? [], random);
  const bench = benchOf(47e3, random);
  const positions = mainPositions(new Controls(build)).map(({ settings }) => settings);
  const takes = [0, 2, 4].map((which): Take => {
    const settings = positions[which]!;
    const shares = sharesOf(guard, settings, FREQUENCIES_HZ, bench, random);
    return { settings, through: "jack", hasReference: true, frequenciesHz: FREQUENCIES_HZ, ...shares };
  });
  const taps = isTapped ? { heard: heardOf(build, guard, { seed: 31 }), input: USUAL_TAP_INPUT } : undefined;
  return { truth, answer: examine(build, { rig: USUAL_RIG, takes, taps, readings: [] }, NO_CHECKPOINT) };
}

describe("taps beside takes at the jack", () => {
  it("tell guards apart by their wiring alone, whatever their parts", () => {
    const swapped = singleFaults(build).find(({ kind }) => kind === "leads-swapped")!;
    const tone = partsOfKind(build, "cap")[0]![0];
    const [leads, cap] = [swapped.edits, [{ edit: "capacitance", part: tone, factor: 2 } as const]].map(
      (edits) => ({ build: editBuild(build, edits) }) as Subject,
    ) as [Subject, Subject];
    const drawn = { build } as Subject;
    const evidence = new TapEvidence(heardOf(build, build, { seed: 32 }));
    expect(evidence.keyOf(cap)).toBe(evidence.keyOf(drawn));
    expect(evidence.keyOf(leads)).not.toBe(evidence.keyOf(drawn));
    expect(evidence.apart(drawn, leads)).toBeGreaterThan(10);
    expect(evidence.weigh(drawn).squares).toBeLessThan(evidence.weigh(leads).squares - 10);
  });

  thoroughly("show a pickup whose leads are exchanged, which the jack alone cannot", async () => {
    const { truth, answer } = answerTo("leads-swapped", "middle.hot", true);
    expect(answer.verdict, answer.summary).toBe("departs");
    expect(answer.departures[0]!.faults).toEqual([
      expect.objectContaining({ kind: "leads-swapped", lugs: truth!.lugs }),
    ]);
    expect(answerTo("leads-swapped", "middle.hot", false).answer.verdict).toBe("as-drawn");
  });

  thoroughly("leave a sound guard as drawn", async () => {
    expect(answerTo(undefined, "", true).answer.verdict).toBe("as-drawn");
  });
});
