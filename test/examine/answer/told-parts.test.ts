import { describe, expect, it } from "vitest";
import type { Build } from "../../../src/build-file/schema.ts";
import { partsTold } from "../../../src/examine/answer/told-parts.ts";
import type { Departure } from "../../../src/examine/departures/departure.ts";
import { departuresOf } from "../../../src/examine/departures/departures.ts";
import { planFor, USUAL_RIG } from "../../../src/examine/plan/plan.ts";
import { weighingOf } from "../../../src/examine/weigh/evidence-of.ts";
import { seeded } from "../simulated-guard.ts";
import { trialGuards } from "../trial-guards.ts";
import { takesOf } from "../trials.ts";

const { build } = trialGuards.find(({ name }) => name === "one P90")!;
const isOf = (kind: string) => (each: Departure) => each.faults([1])[0]?.kind === kind;

/** What takes of every knob tell of a guard, if it departs in this way. */
function toldBy(departure: Departure, of: Build = build) {
  const takes = takesOf(
    of,
    departure.edits,
    seeded(5),
    planFor(of).map(({ settings }) => settings),
  );
  const { weigher } = weighingOf(of, { takes, rig: USUAL_RIG });
  return partsTold(of, weigher, weigher.refined(weigher.firstLook(departure))).parts;
}

describe("values told of a guard that departs", () => {
  it("are those of the part that is in it, beside the one that was drawn", () => {
    const departure = departuresOf(build).find(isOf("cap-ten-times"))!;
    const part = departure.edits.flatMap((edit) => ("part" in edit ? [edit.part] : []))[0]!;
    const cap = toldBy(departure).find((each) => each.part === part)!;
    expect(cap.drawn).toBeCloseTo(22e-9, 12);
    // The capacitor that was fitted is within its tenth of ten times as much.
    expect(Math.abs(Math.log(cap.value / 220e-9))).toBeLessThan(0.12);
    expect(cap.message).toMatch(/ is 2\d\d nF .*drawn as 22 nF|tolerance; drawn as 22 nF/);
  });

  it("are called each by a name of its own, a coil's losses too", () => {
    const titles = toldBy(departuresOf(build).find(isOf("cap-ten-times"))!).map(({ title }) => title);
    expect(new Set(titles).size).toBe(titles.length);
    expect(titles).toContainEqual(expect.stringMatching(/: core loss 1, inductance$/));
  });

  it("leave out a winding that is broken, which has none", () => {
    const broken = departuresOf(build).find(isOf("coil-open"))!;
    expect(toldBy(broken).filter(({ part }) => part === "bridge")).toEqual([]);
  });
});
