import { describe, expect, it } from "vitest";
import { singleFaults } from "../../src/bench/faults/kinds/single-faults.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../src/build-file/settings.ts";
import { NO_CHECKPOINT } from "../../src/checkpoint.ts";
import { valueAt } from "../../src/choice/variant.ts";
import { examine } from "../../src/examine/examine.ts";
import { USUAL_RIG } from "../../src/examine/plan/plan.ts";
import { seeded, soldered } from "./simulated-guard.ts";
import { takesOf } from "./trials.ts";

const guardWith = (cap: string) =>
  readBuild({
    presolder: 1,
    plan: {
      layout: "lever-3-two-pickups",
      pickups: { neck: "single-vintage", bridge: "single-medium" },
      volume: "250k",
      tones: [{ pot: "250k", cap }],
    },
  });
const BUILD = guardWith("22n");

const SEED = 12;

function withFault(kind: string | undefined, lug = "") {
  const truth = singleFaults(BUILD).find((fault) => fault.kind === kind && fault.lugs.includes(lug));
  return { truth, takes: takesOf(BUILD, truth?.edits ?? [], seeded(SEED)) };
}

describe("a guard examined with a meter beside", () => {
  const { truth, takes } = withFault("wire-open", "claw");
  const between = truth!.lugs as [string, string];

  it("names by a reading what no take shows: the strings' ground wire", () => {
    const readings = [{ between, ohms: null }];
    const answer = examine(BUILD, { rig: USUAL_RIG, takes: takes.slice(0, 2), readings }, NO_CHECKPOINT);
    expect(answer.verdict, answer.summary).toBe("departs");
    expect(answer.departures[0]!.faults).toEqual([{ kind: "wire-open", lugs: truth!.lugs }]);
    expect(answer.title).toMatch(/^Open connection: .*claw/);
    expect(answer.departures[0]!.next).toMatch(/^Heat the joints/);
  });

  it("calls it as drawn without one, says that it would not show, and which values the takes tell", () => {
    const {
      verdict,
      notShown,
      parts,
      departures,
      takes: told,
    } = examine(BUILD, { rig: USUAL_RIG, takes, readings: [] }, NO_CHECKPOINT);
    expect(verdict).toBe("as-drawn");
    expect(departures[0]!.faults).toEqual([{ kind: "none", lugs: [] }]);
    expect(notShown.map(({ faults }) => faults[0]!.lugs)).toContainEqual(truth!.lugs);
    expect(told.every(({ agrees, curves }) => agrees && curves.best === null)).toBe(true);
    // Real eddy currents are no single resistor.
    const byTakes = parts.filter(({ told: by, field }) => by === "takes" && !field.includes("loss"));
    expect(byTakes.map(({ part, field }) => `${part} ${field}`)).toEqual(
      expect.arrayContaining(["cap capacitance", "bridge coils.coil.inductance", "neck coils.coil.resistance"]),
    );
    // The same parts as the takes are of: what is drawn first from this seed.
    const guard = soldered(BUILD, truth!.edits, seeded(SEED));
    for (const { part, field, value, standardError } of byTakes) {
      expect(Math.abs(value - valueAt(guard, part, field)!), `${part} ${field}`).toBeLessThan(3 * standardError);
    }
  });
});

it("says of parts that no take shows that no more is known than their tolerance", () => {
  const [first] = withFault(undefined).takes;
  // In the bridge's position the neck pickup hangs on nothing.
  const { parts, nextTake, verdict, next } = examine(
    BUILD,
    { rig: USUAL_RIG, takes: [first!], readings: [] },
    NO_CHECKPOINT,
  );
  const neck = parts.filter(({ part }) => part === "neck");
  expect(neck.length).toBeGreaterThan(2);
  expect(neck.map(({ told, value }) => [told, value])).toEqual(neck.map(({ drawn }) => ["tolerance", drawn]));
  expect(verdict).toBe("as-drawn");
  expect(next).toMatch(/6 takes of the plan/);
  expect(nextTake).not.toBeNull();
});

it("asks for the take that tells apart what one take leaves open: a volume that works backwards, or a short", () => {
  const { truth, takes } = withFault("outer-lugs-swapped", "volume.1");
  const question = { rig: USUAL_RIG, readings: [] };
  const one = examine(BUILD, { ...question, takes: takes.slice(0, 1) }, NO_CHECKPOINT);
  expect(one.verdict).toBe("departs");
  expect(one.departures[0]!.sameAs.length).toBeGreaterThan(3);
  const proposed = parseSettings(new Controls(BUILD), one.nextTake!.settings);
  const both = takesOf(BUILD, truth!.edits, seeded(SEED), [takes[0]!.settings, proposed]);
  const two = examine(BUILD, { ...question, takes: both }, NO_CHECKPOINT);
  expect(two.departures[0]!.sameAs.length).toBeLessThan(one.departures[0]!.sameAs.length);
  const named = [two.departures[0]!, ...two.departures[0]!.sameAs].flatMap(({ faults }) => faults);
  expect(named).toContainEqual({ kind: "outer-lugs-swapped", lugs: truth!.lugs });
});

it("does not let the drawing's cap be another one where a take is held to the drawing", () => {
  const takes = takesOf(guardWith("47n"), [], seeded(SEED));
  const answer = examine(BUILD, { rig: USUAL_RIG, takes, readings: [] }, NO_CHECKPOINT);
  expect(answer.departures[0]!.faults[0]!.kind).toMatch(/cap/);
  const atNothing = answer.takes.filter(({ settings }) => settings.tone === 0);
  expect(atNothing.map(({ agrees }) => agrees)).toEqual([false]);
  // A tenth of the turn lets the cap hardly through.
  expect(answer.takes.some(({ agrees }) => agrees)).toBe(true);
  // Twice the farads have half the ohms, 6 dB less, where the cap is most of what the jack sees; and the best answer follows the take.
  const { frequencies, curves } = answer.takes.find(({ settings }) => settings.tone === 0)!;
  expect([curves.measured, curves.drawn, curves.best!].map(({ length }) => length)).toEqual(
    Array(3).fill(frequencies.length),
  );
  const off = (from: readonly number[]) => Math.max(...from.map((each, i) => Math.abs(each - curves.measured[i]!)));
  expect(off(curves.drawn)).toBeGreaterThan(3);
  expect(off(curves.best!)).toBeLessThan(1);
});
