import { describe, expect, it } from "vitest";
import type { Edit } from "../../../src/bench/faults/edits/edit.ts";
import { mainPositions } from "../../../src/bench/main-positions.ts";
import { Controls } from "../../../src/build-file/settings.ts";
import { NOTHING } from "../../../src/examine/departures/departure.ts";
import { departuresOf } from "../../../src/examine/departures/departures.ts";
import { Point } from "../../../src/examine/model/point.ts";
import { USUAL_RIG } from "../../../src/examine/plan/plan.ts";
import type { Take } from "../../../src/examine/takes/take.ts";
import { DriveLevels } from "../../../src/examine/weigh/drive-levels.ts";
import { weighingOf } from "../../../src/examine/weigh/evidence-of.ts";
import { ExciterEvidence } from "../../../src/examine/weigh/exciter-evidence.ts";
import { FLOOR } from "../../../src/examine/weigh/floor.ts";
import { WindingSense } from "../../../src/examine/weigh/winding-sense.ts";
import { heardOf } from "../simulated-exciter.ts";
import { benchOf, seeded, soldered } from "../simulated-guard.ts";
import { trialGuards } from "../trial-guards.ts";

const { build } = trialGuards.find(({ name }) => name === "three single coils, treble bleed")!;
const FREQUENCIES_HZ = Float64Array.from({ length: 16 }, (_, k) => 90 * 1.35 ** k);
const POSITIONS = mainPositions(new Controls(build)).map(({ settings }) => settings);
const EXCITER = { strength: 0.02, cornerHz: 3000, delaySeconds: 0 };

const ALIKE = { neck: 1, middle: 1, bridge: 1 };

const departureOf = (kind: string, lug: string) =>
  departuresOf(build).find((each) => {
    const [fault] = each.faults([1]);
    return fault?.kind === kind && fault.lugs.includes(lug);
  })!;

/** An exciter over each pickup in the two positions in which it sounds, so many times as strong as over the others. */
function laid(strengths: typeof ALIKE, noise?: number, edits: readonly Edit[] = []) {
  const random = seeded(8);
  const guard = soldered(build, edits, random);
  const bench = { ...benchOf(47e3, random), ...(noise === undefined ? {} : { noise }) };
  const takes = Object.entries(strengths).flatMap(([pickup, strength], index) => {
    const through = { pickup, coil: "coil" };
    const exciter = { ...EXCITER, strength: EXCITER.strength * strength };
    return [4 - 2 * index, index === 0 ? 3 : 1].map((which): Take => {
      const settings = POSITIONS[which]!;
      const heard = heardOf(guard, settings, through, exciter, FREQUENCIES_HZ, bench, random);
      return { settings, through, hasReference: true, frequenciesHz: FREQUENCIES_HZ, ...heard };
    });
  });
  const { weigher, unknowns, ofTakes } = weighingOf(build, { takes, rig: USUAL_RIG });
  const evidence = [0, 2, 4].map((index) => ofTakes[index] as ExciterEvidence);
  return { evidence, unknowns, subject: weigher.subjectAt(NOTHING, new Point(unknowns)), weigher };
}

describe("an exciter's strength", () => {
  it("is held to what the other placements have: a coil that takes thirty times as much is none as drawn", () => {
    const { evidence, subject } = laid({ neck: 1, middle: 30, bridge: 1 });
    const [neck, middle] = evidence.map((each) => {
      const free = new ExciterEvidence(each.laid).weigh(subject, FLOOR).squares;
      return each.weigh(subject, FLOOR).squares - free;
    }) as [number, number];
    // By the law: Σ |K / 10 K₀|² over its frequencies, of which four go together.
    expect(neck).toBeLessThan(0.3);
    expect(middle).toBeGreaterThan(20);
  });

  it("bends what the takes say by the slope that its misfit has", () => {
    const { evidence, subject, unknowns, weigher } = laid({ neck: 1, middle: 6, bridge: 1 });
    const [, middle] = evidence;
    const { right, unknowns: moved } = middle!.weigh(subject, FLOOR);
    const squaresAt = (unknown: number, step: number) => {
      const values = subject.point.values.map((value, k) => (k === unknown ? value + step : value));
      return middle!.weigh(weigher.subjectAt(NOTHING, new Point(unknowns, values)), FLOOR).squares;
    };
    const step = 1e-4;
    for (const [k, unknown] of moved.entries()) {
      const slope = (squaresAt(unknown, step) - squaresAt(unknown, -step)) / (2 * step);
      expect(Math.abs(slope + 2 * right[k]!)).toBeLessThan(1e-3 * Math.max(1, Math.abs(slope)));
    }
  });
});

describe("the sense of a winding", () => {
  it("is told where the exciter is heard, and not of one that is lost in noise", () => {
    const { evidence, subject } = laid(ALIKE);
    expect(new WindingSense(evidence).signs(subject)).toEqual([1, 1, 1]);
    const lost = laid({ neck: 1, middle: 1e-6, bridge: 1 }, 1e-4);
    expect(new WindingSense(lost.evidence).signs(lost.subject)).toEqual([1, 0, 1]);
  });

  it("is the other one where a pickup's leads are exchanged, until that is what is weighed", () => {
    const swapped = departureOf("leads-swapped", "middle.hot");
    const { evidence, subject, weigher } = laid(ALIKE, undefined, swapped.edits);
    const sense = new WindingSense(evidence);
    expect(sense.signs(subject)).toEqual([1, -1, 1]);
    const asItIs = weigher.subjectAt(swapped, subject.point);
    expect(sense.signs(asItIs)).toEqual([1, 1, 1]);
    expect(sense.weigh(asItIs).squares).toBeLessThan(sense.weigh(subject).squares - 10);
  });
});

describe("a coil that is not heard", () => {
  it("is hardly driven alike: an exciter is one and the same over every coil", () => {
    const squaresOf = (strengths: typeof ALIKE) => {
      const { evidence, subject } = laid(strengths);
      return new DriveLevels(evidence).weigh(subject).squares;
    };
    expect(squaresOf(ALIKE)).toBeLessThan(3);
    // By the law: two thirds of (ln 250 / ln 2)².
    expect(squaresOf({ neck: 1, middle: 0.004, bridge: 1 })).toBeGreaterThan(30);
  });

  it("stands in a guard whose pickups changed places, with what strays into the others", () => {
    const swapped = departureOf("pickups-swapped", "neck.hot");
    const { evidence, subject, weigher } = laid(ALIKE, undefined, swapped.edits);
    const asItIs = weigher.subjectAt(swapped, subject.point);
    const [, middle] = evidence.map((each) => ({ ...each.weigh(asItIs, FLOOR), drawn: each.weigh(subject, FLOOR) }));
    expect(middle!.squares).toBeLessThan(middle!.degrees);
    const levels = new DriveLevels(evidence);
    expect(levels.weigh(asItIs).squares).toBeLessThan(levels.weigh(subject).squares - 20);
  });

  it("still has a drive by which its far fields are found", () => {
    const swapped = departureOf("pickups-swapped", "neck.hot");
    const { evidence, subject, weigher, unknowns } = laid(ALIKE, undefined, swapped.edits);
    const { right, unknowns: moved } = evidence[1]!.weigh(weigher.subjectAt(swapped, subject.point), FLOOR);
    const far = unknowns.indexOf("", "far.middle.coil.neck.coil");
    expect(Math.abs(right[moved.indexOf(far)]!)).toBeGreaterThan(0.1);
  });
});

it("an exciter that is heard nowhere speaks for no guard: a drive that is free would follow the noise", () => {
  const { evidence, subject, weigher } = laid({ neck: 1e-6, middle: 1e-6, bridge: 1e-6 }, 1e-4);
  const shorted = weigher.subjectAt(departureOf("shorted-to-shield", "jack.tip"), subject.point);
  for (const each of [...evidence, new DriveLevels(evidence)])
    expect(Math.abs(each.weigh(shorted, FLOOR).squares - each.weigh(subject, FLOOR).squares)).toBeLessThan(1e-3);
});
