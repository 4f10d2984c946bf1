import { describe, expect, test } from "vitest";
import { expandBuild } from "../../../src/build-file/expand.ts";
import type { PlanInput } from "../../../src/build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { recognise } from "../../../src/build-file/recognise/recognise.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";
import { casesOf } from "../../effort.ts";
import { type WireRecord, wiresOf } from "./altered-guards.ts";

const preset = (id: string) => PLAN_PRESETS.find((candidate) => candidate.id === id)!.plan;
const expand = (plan: PlanInput) => expandBuild({ presolder: 1, plan });
const SINGLES = preset("singles-neck-middle");

const isWire = (wire: WireRecord, a: string, b: string) =>
  (wire.from === a && wire.to === b) || (wire.from === b && wire.to === a);

function without(guard: BuildInput, a: string, b: string): BuildInput {
  const wires = wiresOf(guard).filter((wire) => !isWire(wire, a, b));
  expect(wires).toHaveLength(guard.wires.length - 1);
  return { ...guard, wires: wires as BuildInput["wires"] };
}

const withWire = (guard: BuildInput, from: string, to: string): BuildInput => ({
  ...guard,
  wires: [...guard.wires, { from, to }],
});

function withPart(guard: BuildInput, name: string, part: BuildInput["parts"][string]): BuildInput {
  return { ...guard, parts: { ...guard.parts, [name]: part } };
}

function withoutPart(guard: BuildInput, name: string): BuildInput {
  const { [name]: _gone, ...parts } = guard.parts;
  const wires = wiresOf(guard).filter(
    ({ from, to }) => ![from, to].some((lug) => lug === name || lug.startsWith(`${name}.`)),
  );
  return { ...guard, parts, wires: wires as BuildInput["wires"] };
}

describe("what was done by hand on top of a plan", () => {
  test("a wire left out is told by its two lugs", () => {
    expect(recognise(without(expand(SINGLES), "neck.hot", "lever.A3"))).toMatchObject({
      plan: SINGLES,
      edits: [
        {
          kind: "wire-left-out",
          between: ["neck.hot", "lever.A3"],
          text: "A wire of the plan is left out: neck single coil, hot lead — lever, lug of positions 4 and 5, first side.",
        },
      ],
    });
  });

  test("a wire on the wrong lug is one left out and one laid", () => {
    const misplaced = withWire(without(expand(SINGLES), "cap2.a", "tone2.2"), "cap2.a", "tone2.3");
    expect(recognise(misplaced)).toMatchObject({
      plan: SINGLES,
      edits: [
        { kind: "wire-left-out", between: ["cap2.a", "tone2.2"] },
        { kind: "wire-laid", between: ["cap2.a", "tone2.3"] },
      ],
    });
  });

  test.each(PLAN_PRESETS)("each wire of $id left out is found to be left out, or makes another plan", ({ plan }) => {
    const guard = expand(plan);
    for (const { from, to } of casesOf(wiresOf(guard), 5)) {
      const answer = recognise(without(guard, from, to), plan);
      if (answer.plan === null) throw new Error(answer.why);
      expect(answer.edits.length, `${from} ${to}`).toBeLessThanOrEqual(1);
    }
  });

  test("a wire too many is told, one beside another is not", () => {
    const guard = expand(SINGLES);
    expect(recognise(withWire(guard, "tone2.case", "volume.case"))).toMatchObject({ edits: [] });
    expect(recognise(withWire(guard, "lever.B1", "tone2.1"))).toMatchObject({
      plan: { tones: [{ pickups: ["neck"] }, { pickups: ["middle", "bridge"] }] },
      edits: [],
    });
    expect(recognise(withWire(guard, "lever.B1", "jack.tip"))).toMatchObject({
      plan: SINGLES,
      edits: [{ kind: "wire-laid", between: ["lever.B1", "jack.tip"] }],
    });
  });

  test("parts added and left out are told, with the wires of those added", () => {
    const guard = withPart(withoutPart(expand(SINGLES), "claw"), "bypass", { kind: "cap", capacitance: "1n" });
    expect(recognise(withWire(withWire(guard, "bypass.a", "lever.A1"), "bypass.b", "lever.A3"))).toMatchObject({
      plan: SINGLES,
      edits: [
        { kind: "part-left-out", part: "claw", text: "There is no spring claw (strings), which the plan calls claw." },
        { kind: "part-added", part: "bypass", text: "bypass is a part that the plan does not have." },
        { kind: "wire-laid", between: ["bypass.a", "lever.A1"] },
        { kind: "wire-laid", between: ["bypass.b", "lever.A3"] },
      ],
    });
  });

  test("a value that no plan can say is told, and any other goes into the plan", () => {
    const guard = expand(SINGLES);
    const { tone1, cap2, neck } = guard.parts;
    if (tone1?.kind !== "pot" || cap2?.kind !== "cap" || neck?.kind !== "pickup") throw new Error("other parts");
    const parts: BuildInput["parts"] = {
      ...guard.parts,
      tone1: { ...tone1, drives: "dpdt", taper: "linear", measured: "241k", tolerance: 0.1 },
      cap2: { ...cap2, capacitance: "33n", label: "The old one" },
      neck: { ...neck, coils: { coil: { ...neck.coils.coil!, resistance: "5.8k", distance: "160mm" } } },
    };
    expect(recognise({ ...guard, parts })).toMatchObject({
      plan: {
        ...SINGLES,
        pickups: {
          ...SINGLES.pickups,
          neck: { type: "single-vintage", distance: "160mm", coils: { coil: { resistance: "5.8k" } } },
        },
        tones: [
          { pot: "250k", cap: "22n", taper: "linear", measured: "241k", pickups: ["neck"] },
          { pot: "250k", cap: "33n", pickups: ["middle"] },
        ],
      },
      edits: [
        {
          kind: "value",
          part: "tone1",
          field: "drives",
          text: "tone1 has a switch on its shaft that the plan has no use for.",
        },
      ],
    });
  });

  test("a humbucker's own distance is its middle's, and a pickup of no type is a whole part", () => {
    const plan: PlanInput = {
      ...preset("humbuckers-one-volume"),
      pickups: {
        neck: { type: "humbucker-medium", distance: "150mm" },
        bridge: {
          kind: "pickup",
          coils: { one: { resistance: 4000, inductance: 2 }, two: { resistance: 4200, inductance: 2 } },
        },
      },
    };
    expect(recognise(expand(plan))).toMatchObject({ plan, edits: [] });
  });

  test("of two plans equally near the hint wins, and without one the answer is the same every time", () => {
    const guard = without(expand(SINGLES), "lever.B2", "tone2.1");
    const after = recognise(guard, SINGLES);
    expect(after).toMatchObject({ plan: SINGLES, edits: [{ between: ["lever.B2", "tone2.1"] }] });
    expect(recognise(guard)).toEqual(recognise(structuredClone(guard)));
  });

  test("the guard and the hint are left as they were", () => {
    const guard = without(expand(SINGLES), "neck.hot", "lever.A3");
    const [before, hint] = [structuredClone(guard), structuredClone(SINGLES)];
    recognise(guard, hint);
    expect(guard).toEqual(before);
    expect(hint).toEqual(SINGLES);
  });
});

describe("the same circuit wired another way", () => {
  const guard = expand(preset("singles-master-tone"));
  const rewired = (...wires: [string, string][]) =>
    wires.reduce(
      (made, [a, b]) => withWire(made, a, b),
      without(without(without(guard, "volume.3", "tone.1"), "cap.a", "tone.2"), "cap.b", "tone.case"),
    );

  test.each<[string, [string, string][]]>([
    [
      "the cap before the pot",
      [
        ["volume.3", "cap.a"],
        ["cap.b", "tone.1"],
        ["tone.2", "tone.case"],
      ],
    ],
    [
      "the cap before the pot, its wiper first",
      [
        ["volume.3", "cap.b"],
        ["cap.a", "tone.2"],
        ["tone.1", "tone.case"],
      ],
    ],
    [
      "the signal on the wiper",
      [
        ["volume.3", "tone.2"],
        ["tone.1", "cap.b"],
        ["cap.a", "jack.sleeve"],
      ],
    ],
    [
      "lug 3 tied to the wiper",
      [
        ["volume.3", "tone.1"],
        ["tone.2", "cap.a"],
        ["cap.b", "tone.case"],
        ["tone.2", "tone.3"],
      ],
    ],
  ])("%s", (_title, wires) => {
    expect(recognise(rewired(...wires))).toMatchObject({ plan: preset("singles-master-tone"), edits: [] });
  });

  test("but lug 3 in place of lug 1 turns the dial round, and a tone that is no-load minds where lug 3 goes", () => {
    const turned = recognise(rewired(["volume.3", "tone.3"], ["tone.2", "cap.a"], ["cap.b", "tone.case"]));
    expect(turned).toMatchObject({ edits: [{ kind: "wire-left-out" }, { kind: "wire-laid" }] });
    const noLoad = expand(preset("singles-no-load"));
    expect(recognise(withWire(noLoad, "tone1.2", "tone1.3"))).toMatchObject({ edits: [{ kind: "wire-laid" }] });
  });

  test("a humbucker's coils in the other order, which only a split could tell", () => {
    const coils = new Map([
      ["bridge.slug.finish", "bridge.screw.start"],
      ["bridge.slug.start", "bridge.screw.finish"],
      ["bridge.screw.start", "bridge.slug.finish"],
      ["bridge.screw.finish", "bridge.slug.start"],
    ]);
    const swapped = (id: string) => {
      const made = expand(preset(id));
      const wires = wiresOf(made).map(
        ({ from, to }) => [coils.get(from) ?? from, coils.get(to) ?? to] as [string, string],
      );
      return recognise({ ...made, wires });
    };
    expect(swapped("humbuckers-one-volume")).toMatchObject({ plan: preset("humbuckers-one-volume"), edits: [] });
    expect(swapped("one-humbucker")).toMatchObject({ plan: preset("one-humbucker"), edits: [] });
    expect(swapped("hss-push-pull-split")).toMatchObject({ plan: { split: { keeps: "screw" } }, edits: [] });
  });
});

describe("guards of no plan", () => {
  const guard = expand(SINGLES);
  const { lever, neck } = guard.parts;

  test.each<[string, BuildInput]>([
    ["It has no pickup.", ["neck", "middle", "bridge"].reduce(withoutPart, guard)],
    ["It has no output jack.", withoutPart(guard, "jack")],
    ["It has no volume pot, and every plan has one.", withoutPart(guard, "volume")],
    ["It has two selectors, and no plan has more than one.", withPart(guard, "second", lever!)],
    ["It has four pickups, and no plan has more than three.", withPart(guard, "fourth", neck!)],
    [
      "It has three pickups and no selector switch, and every plan with more than one has a selector.",
      withoutPart(guard, "lever"),
    ],
    [
      "No plan has three pickups on such a selector.",
      { ...withPart(guard, "lever", { kind: "switch", type: "toggle-3" }), wires: [] },
    ],
    ["Its wires are too far from those of any plan with the same parts.", { ...guard, wires: [] }],
    ["A wire goes to neck.nose, and there is no such lug.", withWire(guard, "neck.nose", "jack.tip")],
    ["The build file cannot be read.", { ...guard, presolder: 2 } as unknown as BuildInput],
  ])("%s", (why, build) => {
    expect(recognise(build)).toEqual({ plan: null, why });
  });
});
