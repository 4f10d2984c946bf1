import { describe, expect, test } from "vitest";
import { readBuild } from "../../src/build-file/read-build.ts";
import { MAX_PARTS, MAX_WIRES } from "../../src/limits.ts";
import { Wiring } from "../../src/wiring/nets.ts";
import { onePickup } from "../fixtures/circuits.ts";
import { presetGuard } from "../fixtures/harness.ts";
import { faultsFrom } from "./refusals.ts";

type Guard = { parts: object; wires: unknown[] };
const WIRES = (onePickup() as Guard).wires;

/** The plainest guard with the value at a dotted path replaced, or taken away where it is undefined. */
function changed(path: string, value: unknown): unknown {
  const build = structuredClone(onePickup()) as Record<string, unknown>;
  const keys = path.split(" ");
  const last = keys.pop()!;
  const holder = keys.reduce((at, key) => at[key] as Record<string, unknown>, build);
  if (value === undefined) delete holder[last];
  else holder[last] = value;
  return build;
}

const withWire = (...wires: unknown[]) => changed("wires", [...WIRES, ...wires]);
const refusal = (input: unknown) => faultsFrom(() => readBuild(input));

test("the guard that the refusals start from is accepted", () => {
  expect(() => readBuild(onePickup())).not.toThrow();
});

describe("each fault names its field and what was expected", () => {
  test.each<[string, unknown, RegExp]>([
    ["text", "guard", /expected a JSON object/],
    ["a list", [], /expected a JSON object/],
    ["null", null, /expected a JSON object/],
  ])("%s in place of a build", (_, input, message) => {
    expect(refusal(input)).toEqual([{ path: "build", message: expect.stringMatching(message) }]);
  });

  test.each<[string, unknown, RegExp]>([
    ["presolder", 2, /expected 1/],
    ["presolder", undefined, /expected 1/],
    ["parts volume kind", "knob", /"pot"/],
    ["parts volume taper", "audoi", /expected "linear", "audio"/],
    ["parts volume resistance", 0, /expected more than 0/],
    ["parts volume resistance", true, /expected a number or text/],
    ["parts volume resistance", Number.NaN, /./],
    ["parts volume midpoint", 1, /is 1; expected less than 1/],
    ["parts volume angles", { electrical: 310 }, /electrical is 310°; expected at most the mechanical 300°/],
    ["parts volume role", "loudness", /"volume", "tone", "blend", "other"/],
    ["parts cap capacitance", "-22n", /expected more than 0/],
    ["parts cap capacitance", "1F", /expected at most 0.0001/],
    ["parts cap capacitance", "0,022uF", /decimal point/],
    ["parts cap tolerance", 2, /is 2; expected at most 0.9/],
    ["parts pickup coupling", 0.1, /two coils/],
    ["parts pickup conductors", 3, /expected 2 or 4/],
    ["parts pickup leads", { "slug.start": "red" }, /no lug "slug.start".*expected "hot", "ground", "shield"/],
    ["parts pickup leads", { hot: "" }, /./],
    ["parts pickup coils", {}, /one coil or two/],
    ["parts pickup coils coil loss", "much", /cannot be read/],
    ["parts pickup coils coil winding", "backwards", /"forward", "reverse"/],
    ["parts pickup coils coil inductance", "2400H", /at most 1000/],
    ["parts a.b", { kind: "terminal" }, /begins with a letter/],
    ["parts constructor", { kind: "terminal" }, /reserved/],
    ["cable", { length: "1000ft", capacitance: "100p" }, /./],
    ["wires", "many", /./],
  ])("%s: %j", (path, value, message) => {
    const faults = refusal(changed(path, value));
    const dotted = `build.${path.replaceAll(" ", ".")}`;
    expect(faults[0]!.path.startsWith(dotted), JSON.stringify(faults)).toBe(true);
    expect(faults[0]!.message).toMatch(message);
  });

  test.each<[object, string, RegExp]>([
    [{ type: "lever5" }, "type", /did you mean "lever-5"/],
    [{}, "type", /`type` or `positions`/],
    [{ type: "lever-5", positions: [[["a", "b"]]] }, "type", /`type` or `positions`/],
    [{ type: "rotary" }, "poles", /`poles` and `throws`/],
    [{ type: "rotary", poles: 9, throws: 4 }, "poles", /is 9; expected at most 8/],
    [{ positions: [] }, "positions", /./],
    [{ positions: [[["a b"]]] }, "positions.0.0.0", /expected a lug name/],
  ])("a switch of %j", (spec, field, message) => {
    const [fault] = refusal(changed("parts lever", { kind: "switch", ...spec }));
    expect(fault!.path).toBe(`build.parts.lever.${field}`);
    expect(fault!.message).toMatch(message);
  });

  test.each<[unknown, RegExp]>([
    [
      [
        [0, 0.5],
        [1, 0.2],
      ],
      /must not fall/,
    ],
    [
      [
        [0, 0],
        [0.5, 0.1],
        [0.5, 0.2],
        [1, 1],
      ],
      /must rise/,
    ],
    [
      [
        [0, 0],
        [0.9, 1],
      ],
      /the last 1/,
    ],
    [[[0, 0]], /./],
    [
      [
        [0, 0],
        [1, 1.5],
      ],
      /is 1.5; expected at most 1/,
    ],
  ])("a taper table %j", (table, message) => {
    const [fault] = refusal(changed("parts volume taper", table));
    expect(fault!.path).toMatch(/^build\.parts\.volume\.taper/);
    expect(fault!.message).toMatch(message);
  });

  test("an unknown key is named and the nearest known key suggested", () => {
    const [fault] = refusal(changed("parts volume resistence", "250k"));
    expect(fault!.path).toBe("build.parts.volume.resistence");
    expect(fault!.message).toBe('unknown key "resistence"; did you mean "resistance"?');
  });

  test("every fault is told at once, not only the first", () => {
    const build = changed("parts volume resistance", -1) as Record<string, unknown>;
    const faults = refusal({ ...build, presolder: 7, strings: { scale: "3m" } });
    expect(faults.map((fault) => fault.path).sort()).toEqual([
      "build.parts.volume.resistance",
      "build.presolder",
      "build.strings.scale",
    ]);
  });

  test("a build needs exactly one jack", () => {
    expect(refusal({ presolder: 1, parts: {}, wires: [] }).map((fault) => fault.message)).toEqual([
      'there is no jack; expected exactly one part of kind "jack"',
    ]);
    const [two] = refusal(changed("parts jack2", { kind: "jack" }));
    expect(two!.message).toContain("there are 2 jacks");
  });

  test.each([
    ["volume.1", "volume.1"],
    // Two names of one lug.
    ["pickup.hot", "pickup.coil.finish"],
  ])("a wire from %s to %s joins a lug with itself", (from, to) => {
    expect(refusal(withWire([from, to]))).toEqual([
      { path: `build.wires.${WIRES.length}.to`, message: expect.stringContaining("joins a lug with itself") },
    ]);
  });

  test("parts and wires are bounded", () => {
    const { parts } = onePickup() as Guard;
    const terminals = Array.from({ length: MAX_PARTS }, (_, i) => [`t${i}`, { kind: "terminal" }]);
    const many = changed("parts", { ...parts, ...Object.fromEntries(terminals) });
    expect(refusal(many)[0]!.message).toContain(`at most ${MAX_PARTS} parts`);
    const wires = Array.from({ length: MAX_WIRES + 1 }, () => ["volume.1", "volume.case"]);
    expect(refusal(changed("wires", wires))[0]!.message).toContain(`at most ${MAX_WIRES} wires`);
  });
});

describe("a wire's fault names the wire", () => {
  test.each([
    ["volume.4", /there is no lug "volume.4"; did you mean "volume\.[1-3]"/],
    ["volume.cse", /did you mean "volume.case"/],
    ["volumee.2", /did you mean "volume.2"/],
    ["jack.tipp", /did you mean "jack.tip"/],
    ["pickup.hott", /did you mean "pickup.hot"/],
    ["pickup.slug.start", /there is no lug "pickup.slug.start"/],
    ["jack.ring", /there is no lug "jack.ring"/],
    ["pickup.sheild", /did you mean "pickup.shield"/],
  ])("a lug that is not there, %s, suggests the nearest", (lug, message) => {
    const faults = refusal(withWire([lug, "volume.case"]));
    expect(faults).toEqual([{ path: `build.wires.${WIRES.length}.from`, message: expect.stringMatching(message) }]);
  });

  test("a hot or a ground that a pickup of four leads lacks is never taken for its metal", () => {
    const guard = presetGuard("one-humbucker");
    for (const local of ["hot", "ground"]) {
      const [fault] = refusal({ ...guard, wires: [...guard.wires, [`bridge.${local}`, "volume.3"]] });
      expect(fault!.message).toMatch(/every coil of this pickup has leads of its own: .*bridge\.slug\.finish/);
      expect(fault!.message).not.toContain("shield");
    }
  });

  test.each<[unknown, string, RegExp]>([
    [["volume.1"], "", /./],
    [{ from: "volume.1", to: "volume.case", how: "glue" }, ".how", /"bent lug"/],
    [{ from: "volume.1", too: "volume.case" }, ".too", /did you mean "to"/],
  ])("%j", (wire, field, message) => {
    const faults = refusal(withWire(wire));
    const found = faults.find((fault) => fault.path.startsWith(`build.wires.${WIRES.length}${field}`));
    expect(found?.message, JSON.stringify(faults)).toMatch(message);
  });

  test("a one-coil pickup answers to its coil's own leads as well as to hot and ground", () => {
    const build = readBuild(withWire(["pickup.coil.finish", "volume.3"], ["volume.case", "pickup.coil.start"]));
    const { netOfLug } = new Wiring(build).wiredNets();
    const plain = new Wiring(readBuild(onePickup())).wiredNets();
    expect([...netOfLug]).toEqual([...plain.netOfLug]);
  });
});
