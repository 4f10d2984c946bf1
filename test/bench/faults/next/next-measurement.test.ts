import { describe, expect, it } from "vitest";
import { diagnose } from "../../../../src/bench/faults/diagnose.ts";
import type { MeasuredReading } from "../../../../src/bench/faults/diagnose-request.ts";
import { editBuild } from "../../../../src/bench/faults/edits/edit-build.ts";
import type { Fault } from "../../../../src/bench/faults/fault.ts";
import { groupEqual } from "../../../../src/bench/faults/hypotheses/groups.ts";
import { singleHypotheses } from "../../../../src/bench/faults/hypotheses/hypotheses.ts";
import { countFaults, createPrior } from "../../../../src/bench/faults/hypotheses/prior.ts";
import { Weigher } from "../../../../src/bench/faults/hypotheses/weigher.ts";
import { singleFaults } from "../../../../src/bench/faults/kinds/single-faults.ts";
import { Likelihood } from "../../../../src/bench/faults/likelihood/likelihood.ts";
import { nextListening } from "../../../../src/bench/faults/next/next-listening.ts";
import { nextMeasurement } from "../../../../src/bench/faults/next/next-measurement.ts";
import { suspectsOf } from "../../../../src/bench/faults/next/suspects.ts";
import { meterModelOf } from "../../../../src/bench/meter/meter-model.ts";
import { meterReadings } from "../../../../src/bench/meter/readings.ts";
import { readBuild } from "../../../../src/build-file/read-build.ts";
import { onePickup, threeSingles } from "../../../fixtures/circuits.ts";

const build = readBuild(threeSingles());

function faultNamed(kind: string, lugs: string): Fault {
  return singleFaults(build).find((fault) => fault.kind === kind && fault.lugs.join() === lugs)!;
}

/** The readings of a guard with this fault, then whatever the finder asks for next, one reading after another. */
function interrogate(fault: Fault, rounds: number) {
  const guard = editBuild(build, fault.edits);
  const readings: MeasuredReading[] = [1, 2, 3, 4, 5].map((lever) => {
    const between = ["jack.tip", "jack.sleeve"] as const;
    return {
      between,
      settings: { lever },
      ohms: meterReadings(guard, { probes: [{ between, settings: { lever } }] }).probes[0]!.ohms,
    };
  });
  for (let round = 0; ; round++) {
    const diagnosis = diagnose(build, { readings });
    const next = diagnosis.nextMeasurement;
    if (round === rounds || next?.kind !== "meter") return { diagnosis, asked: readings.length - 5 };
    const { between, settings, sweep } = next;
    const probe = { between, settings, ...(sweep === undefined ? {} : { sweep }) };
    readings.push({ ...probe, ohms: meterReadings(guard, { probes: [probe] }).probes[0]!.ohms });
  }
}

describe("the next measurement", () => {
  it.each([
    ["wire-open", "neck.hot,lever.A3"],
    ["coil-open", "bridge.hot,bridge.ground"],
    ["wire-open", "middle.ground,volume.case"],
    ["lugs-shorted", "volume.1,volume.2"],
    ["contact-open", "lever.A2"],
    ["wire-open", "volume.2,jack.tip"],
  ])("asked for again and again, leaves %s %s alone or nearly", (kind, lugs) => {
    const before = interrogate(faultNamed(kind, lugs), 0).diagnosis.explanations[0]!;
    const { diagnosis } = interrogate(faultNamed(kind, lugs), 4);
    const [first] = diagnosis.explanations;
    const named = [first!, ...first!.sameAs].map(({ faults }) => `${faults[0]!.kind} ${faults[0]!.lugs}`);
    expect(named).toContain(`${kind} ${lugs}`);
    expect(named.length).toBeLessThanOrEqual(Math.max(3, before.sameAs.length / 2));
  });

  it("says for every outcome which faults would remain, and the outcomes differ", () => {
    const { nextMeasurement } = interrogate(faultNamed("coil-open", "neck.hot,neck.ground"), 0).diagnosis;
    if (nextMeasurement?.kind !== "meter") throw new Error("expected a measurement with the meter");
    expect(nextMeasurement.outcomes.length).toBeGreaterThan(1);
    const levels = nextMeasurement.outcomes.map(({ low }) => low);
    expect(new Set(levels).size).toBe(levels.length);
    for (const { faults } of nextMeasurement.outcomes) expect(faults.length).toBeGreaterThan(0);
  });

  it("goes by ear where no meter can tell: a cap that is open, or ten times too large", () => {
    const sound = readBuild(onePickup());
    const model = meterModelOf(sound, 20);
    const faults = singleFaults(sound).filter(({ kind }) => kind === "cap-open" || kind === "cap-ten-times");
    const prior = createPrior(countFaults(faults, {}), { isComplainedOf: false });
    const weigher = new Weigher(model, [], new Likelihood([], [], 0), prior);
    const suspects = suspectsOf(
      groupEqual(
        singleHypotheses(weigher, faults, () => {}),
        () => 0,
      ),
    );
    expect(suspects).toHaveLength(3);
    expect(nextMeasurement(sound, model, suspects, new Set(), 1e6)).toBeNull();
    const next = nextListening(sound, model, suspects, 1e6)!;
    expect(next.symptom).toMatchObject({ code: "tone-no-effect", control: "tone" });
    expect(next.outcomes.map(({ heard, faults: left }) => [heard, left.map(([fault]) => fault!.kind)])).toEqual([
      [true, ["cap-open"]],
      [false, ["none", "cap-ten-times"]],
    ]);
  });
});
