import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseLongForm } from "../../../src/build-file/build-file.ts";
import { expandBuild } from "../../../src/build-file/expand.ts";
import type { PlanInput } from "../../../src/build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { type Recognised, recognise } from "../../../src/build-file/recognise/recognise.ts";
import { replan } from "../../../src/build-file/recognise/replan.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";
import { PresolderError } from "../../../src/errors.ts";
import { casesOf, effort } from "../../effort.ts";
import { anySeeds, exchanged, otherRoutes, renamed, turnsIn, type WireRecord, wiresOf } from "./altered-guards.ts";
import { expectSameSound } from "./same-sound.ts";

const preset = (id: string) => PLAN_PRESETS.find((candidate) => candidate.id === id)!.plan;
const expand = (plan: PlanInput, rest: object = {}) => expandBuild({ presolder: 1, plan, ...rest });
const SINGLES = preset("singles-neck-middle");
const MASTER = preset("singles-master-tone");

function found(guard: BuildInput): Recognised {
  const answer = recognise(guard);
  if (answer.plan === null) throw new Error(answer.why);
  return answer;
}

const replanned = (guard: BuildInput, to: PlanInput) => replan(guard, found(guard), to);
const hasWire = (guard: BuildInput, a: string, b: string) =>
  wiresOf(guard).some(({ from, to }) => (from === a && to === b) || (from === b && to === a));

describe.each(PLAN_PRESETS)("the guard of $id, straight from its plan", ({ plan }) => {
  test.each(casesOf(PLAN_PRESETS, 5))("becomes exactly the guard of $id", ({ plan: to }) => {
    const rest = { title: "Mine", cable: { length: "3m", capacitance: "100p" }, strings: { scale: "0.61m" } };
    expect(replanned(expand(plan, rest), to)).toEqual({ source: expand(to, rest), kept: [], dropped: [] });
  });
});

/** Resistors are named by their order, which says nothing of the guard. */
function inOrder({ resistors, ...plan }: PlanInput): PlanInput {
  return resistors ? { ...plan, resistors: resistors.toSorted((a, b) => a.across.localeCompare(b.across)) } : plan;
}

const anyPresets = fc.tuple(fc.constantFrom(...PLAN_PRESETS), fc.constantFrom(...PLAN_PRESETS));

test("any guard of a plan, renamed, turned and wired by other routes, becomes one that sounds as the new plan", () => {
  fc.assert(
    fc.property(anyPresets, anySeeds, ([from, to], seeds) => {
      const straight = expand(from.plan);
      const names = new Map(Object.keys(straight.parts).map((name, i) => [name, `x${i}`]));
      const turns = turnsIn(straight).filter((_, i) => seeds[i % seeds.length]! % 2);
      const guard = otherRoutes(renamed(exchanged(straight, ...turns.flat()), names), seeds);
      const { source, kept, dropped } = replanned(guard, to.plan);
      expect([...kept, ...dropped]).toEqual([]);
      const after = recognise(source, to.plan);
      if (after.plan === null) throw new Error(after.why);
      expect(after.edits).toEqual([]);
      expectSameSound(source, expand(after.plan), after.names);
      expect(expand(inOrder(after.plan)).parts).toEqual(expand(inOrder(found(expand(to.plan)).plan)).parts);
    }),
    { numRuns: effort(30, 160) },
  );
});

test("any guard spoilt by hand stays readable under any other plan, and every edit is kept or comes back", () => {
  const lugsOf = (guard: BuildInput) => [...new Set(wiresOf(guard).flatMap(({ from, to }) => [from, to]))];
  fc.assert(
    fc.property(anyPresets, fc.array(fc.nat(10_000), { minLength: 4, maxLength: 4 }), ([from, to], [a, b, c, d]) => {
      const straight = expand(from.plan);
      const lugs = lugsOf(straight);
      const wires = wiresOf(straight).filter((_, i) => i !== a! % straight.wires.length);
      const [one, other] = [lugs[b! % lugs.length]!, lugs[c! % lugs.length]!];
      if (one !== other) wires.push({ from: one, to: other });
      const parts: BuildInput["parts"] =
        d! % 2 ? { ...straight.parts, extra: { kind: "cap", capacitance: "1n" } } : straight.parts;
      if (d! % 2) wires.push({ from: "extra.a", to: lugs[d! % lugs.length]! }, { from: "extra.b", to: one });
      const guard = { ...straight, parts, wires: wires as BuildInput["wires"] };
      const before = recognise(guard, from.plan);
      if (before.plan === null) return;
      const copy = structuredClone(guard);
      const { source, kept, dropped } = replan(guard, before, to.plan);
      parseLongForm(source);
      expect(guard).toEqual(copy);
      expect(new Set([...kept, ...dropped])).toEqual(new Set(before.edits));
    }),
    { numRuns: effort(40, 400) },
  );
});

test("to the plan that it has, a guard stays as it is, edits and all", () => {
  for (const { plan } of casesOf(PLAN_PRESETS, 12)) {
    const straight = expand(plan);
    const wires = wiresOf(straight).filter(({ from }) => from !== "claw");
    const guard = { ...straight, wires: [...wires, { from: "claw", to: "jack.tip" }] as BuildInput["wires"] };
    const from = found(guard);
    const { source, kept, dropped } = replan(guard, from, from.plan);
    expect({ kept, dropped }).toEqual({ kept: from.edits, dropped: [] });
    expect(recognise(source)).toEqual(from);
  }
});

describe("what a person gave a part", () => {
  function marked(): BuildInput {
    const guard = expand(SINGLES);
    const { volume, tone1, cap1, neck } = guard.parts;
    if (volume?.kind !== "pot" || tone1?.kind !== "pot" || cap1?.kind !== "cap" || neck?.kind !== "pickup")
      throw new Error("other parts");
    const wires = wiresOf(guard).map((wire) =>
      wire.from === "volume.2" ? { ...wire, colour: "white", length: "180mm" } : wire,
    ) as BuildInput["wires"];
    return {
      ...guard,
      notes: "From the attic",
      parts: {
        ...guard.parts,
        volume: { ...volume, label: "Loud", measured: "243k", tolerance: 0.1, place: { x: 0.05, y: 0.07 } },
        tone1: { ...tone1, label: "Dark" },
        cap1: { ...cap1, tolerance: 0.05 },
        neck: { ...neck, label: "The old neck pickup" },
      },
      wires,
    };
  }

  test("stays with it: label, place, tolerance, measured value, and a wire's colour and length", () => {
    const { source } = replanned(marked(), { ...SINGLES, toneFeed: "after-volume" });
    const plain = expand({ ...SINGLES, toneFeed: "after-volume" });
    expect(source).toMatchObject({ notes: "From the attic" });
    expect(source.parts).toEqual({ ...plain.parts, ...marked().parts });
    const marks = wiresOf(source).find(({ from, to }) => from === "volume.2" && to === "jack.tip");
    expect(marks).toEqual({ from: "volume.2", to: "jack.tip", colour: "white", length: "180mm" });
    expect(source.wires.map((wire) => ({ ...wire, colour: undefined, length: undefined }))).toEqual(
      plain.wires.map((wire) => ({ ...wire, colour: undefined, length: undefined })),
    );
  });

  test("goes along from the first of two tones to the only one", () => {
    const { source } = replanned(marked(), MASTER);
    expect(source.parts.tone).toMatchObject({ label: "Dark" });
    expect(source.parts.cap).toMatchObject({ tolerance: 0.05 });
    expect(Object.keys(source.parts)).toEqual(Object.keys(expand(MASTER).parts));
  });

  test("goes with a pickup that goes, and a measured value with another nominal one", () => {
    const to: PlanInput = { ...SINGLES, pickups: { ...SINGLES.pickups, neck: "p90" }, volume: "500k" };
    const { source } = replanned(marked(), to);
    expect(source.parts.neck).toEqual(expand(to).parts.neck);
    expect(source.parts.volume).toMatchObject({ label: "Loud", resistance: "500k", tolerance: 0.1 });
    expect(source.parts.volume).not.toHaveProperty("measured");
  });
});

describe("a guard wired by other routes", () => {
  const straight = expand(SINGLES);
  // The tones' cases hang on each other and on the jack, and not in a chain from the volume.
  const byHand: WireRecord[] = [
    ...wiresOf(straight).filter(({ how }) => how !== "bus wire"),
    { from: "tone1.case", to: "jack.sleeve" },
    { from: "tone2.case", to: "tone1.case" },
  ];
  const guard = { ...straight, wires: byHand as BuildInput["wires"] };

  test("keeps every wire that lies within a net of the new plan, and gets only those that are missing", () => {
    const to: PlanInput = { ...SINGLES, trebleBleed: { capacitance: "1n" } };
    const { source } = replanned(guard, to);
    expect(source.wires.slice(0, byHand.length)).toEqual(byHand);
    expect(wiresOf(source).slice(byHand.length)).toEqual([
      { from: "bleed.a", to: "volume.3", how: "leg" },
      { from: "bleed.b", to: "volume.2", how: "leg" },
    ]);
  });

  test("is joined up again where a net ran by way of a part that is gone", () => {
    const { source } = replanned(guard, preset("singles-no-tone"));
    expect(recognise(source)).toMatchObject({ plan: found(expand(preset("singles-no-tone"))).plan, edits: [] });
  });
});

describe("edits under another plan", () => {
  const spoilt = (...extra: WireRecord[]): BuildInput => ({
    ...expand(SINGLES),
    wires: [...wiresOf(expand(SINGLES)), ...extra] as BuildInput["wires"],
  });

  test("a wire laid stays where both its lugs are still there, and comes back where one is gone", () => {
    const guard = spoilt({ from: "tone2.3", to: "lever.A1" });
    const after = replanned(guard, { ...SINGLES, volume: "500k" });
    expect(after.kept).toMatchObject([{ kind: "wire-laid", between: ["tone2.3", "lever.A1"] }]);
    expect(hasWire(after.source, "tone2.3", "lever.A1")).toBe(true);
    const gone = replanned(guard, MASTER);
    expect(gone.source).toEqual(expand(MASTER));
    expect(gone.dropped).toMatchObject([{ kind: "wire-laid", between: ["tone2.3", "lever.A1"] }]);
  });

  test("a wire left out is left out of the new plan too", () => {
    const guard = {
      ...expand(SINGLES),
      wires: wiresOf(expand(SINGLES)).filter(({ from }) => from !== "neck.hot"),
    } as BuildInput;
    const { source, kept } = replanned(guard, MASTER);
    expect(kept).toMatchObject([{ kind: "wire-left-out", between: ["neck.hot", "lever.A3"] }]);
    expect(source.wires).toEqual(wiresOf(expand(MASTER)).filter(({ from }) => from !== "neck.hot"));
  });

  test("an added part stays with its wires, and goes where nothing is left to hold it", () => {
    const made = spoilt({ from: "extra.a", to: "tone2.3" }, { from: "extra.b", to: "volume.case" });
    const guard: BuildInput = { ...made, parts: { ...made.parts, extra: { kind: "resistor", resistance: "1M" } } };
    const stays = replanned(guard, {
      ...SINGLES,
      sharedCap: "47n",
      tones: [
        { pot: "250k", pickups: ["neck"] },
        { pot: "250k", pickups: ["middle"] },
      ],
    });
    expect(stays.dropped).toEqual([]);
    expect(hasWire(stays.source, "extra.a", "tone2.3")).toBe(true);
    const goes = replanned(guard, MASTER);
    expect(goes.source).toEqual(expand(MASTER));
    expect(goes.dropped).toHaveLength(3);
  });

  test("a plan that cannot be wired is refused inside the plan", () => {
    const to = { ...SINGLES, split: { pickup: "neck", by: "tone1" } };
    expect(() => replanned(expand(SINGLES), to)).toThrow(PresolderError);
  });
});

test("what a cap is made of is not the plan's to say, and stays under another one", () => {
  const straight = expand(SINGLES);
  const cap1 = {
    ...straight.parts.cap1!,
    dielectric: "film-pp" as const,
    lossFactor: 0.001,
  } as BuildInput["parts"][string];
  const guard = { ...straight, parts: { ...straight.parts, cap1 } };
  expect(found(guard).edits).toEqual([]);
  const { source } = replanned(guard, { ...SINGLES, volume: "500k" });
  expect(source.parts.cap1).toMatchObject({ dielectric: "film-pp", lossFactor: 0.001 });
});
