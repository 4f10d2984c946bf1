import { describe, expect, it } from "vitest";
import { hardwareOf } from "../../../src/bench/hardware/hardware.ts";
import { partsOfKind } from "../../../src/build-file/parts-of-kind.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { presetGuard, withoutPickups } from "../../fixtures/harness.ts";

const lineOf = (id: string, what: RegExp) =>
  hardwareOf(readBuild(presetGuard(id))).find((line) => what.test(line.what));

describe.each(PLAN_PRESETS.map(({ id }) => id))("the hardware of %s", (id) => {
  const build = readBuild(presetGuard(id));

  it("is for parts of the guard, each line once", () => {
    const lines = hardwareOf(build);
    for (const { for: parts } of lines) for (const part of parts) expect(Object.keys(build.parts)).toContain(part);
    expect(new Set(lines.map(({ what }) => what)).size).toBe(lines.length);
  });

  it("counts two height screws a pickup, and a nut and a knob a pot", () => {
    const pickups = partsOfKind(build, "pickup").length;
    const pots = partsOfKind(build, "pot").map(([name]) => name);
    expect(lineOf(id, /^pickup height screw$/)!.quantity).toBe(2 * pickups);
    expect(lineOf(id, /^spring or rubber sleeve/)!.quantity).toBe(2 * pickups);
    expect(lineOf(id, /^knob$/)!.quantity).toBe(pots.length);
    expect(lineOf(id, /^nut$/)!.for).toEqual(expect.arrayContaining([...pots, "jack"]));
    expect(lineOf(id, /^nut$/)!.quantity).toBe(lineOf(id, /^nut$/)!.for.length);
  });
});

it("makes no number up: guard screws, solder and sleeve are as many or as much as it takes", () => {
  expect(lineOf("singles-three-way", /^guard screw$/)).toEqual({
    what: "guard screw",
    quantity: null,
    for: [],
    note: "As many as the guard has holes.",
  });
  expect(lineOf("singles-three-way", /^solder with/)!.quantity).toBeNull();
  expect(lineOf("singles-three-way", /^insulating sleeve$/)!.quantity).toBeNull();
});

it("gives a lever two screws and a tip, and neither to a guard without one", () => {
  expect(lineOf("singles-three-way", /^screw for the lever/)).toMatchObject({ quantity: 2, for: ["lever"] });
  expect(lineOf("singles-three-way", /^tip for the lever/)).toMatchObject({ quantity: 1, for: ["lever"] });
  expect(lineOf("humbuckers-one-volume", /lever/)).toBeUndefined();
  expect(lineOf("humbuckers-one-volume", /^tip for the toggle/)).toMatchObject({ quantity: 1, for: ["toggle"] });
});

it("keeps a spacer for a push-pull alone, and has the shaft looked at before a knob is bought", () => {
  expect(lineOf("hss-push-pull-split", /^spacer/)).toMatchObject({ quantity: 1, for: ["tone2"] });
  expect(lineOf("singles-three-way", /^spacer/)).toBeUndefined();
  expect(lineOf("singles-three-way", /^knob$/)!.note).toMatch(/shaft first: a split one.*a solid one/);
});

it("lists foil for a shielded guard alone, and a tag where grounds meet on a point of their own", () => {
  const { plan } = PLAN_PRESETS.find(({ id }) => id === "singles-three-way")!;
  const whatsOf = (options: object) =>
    hardwareOf(readBuild({ presolder: 1, plan: { ...plan, ...options } })).map(({ what }) => what);
  expect(whatsOf({ shield: true })).toContain("copper foil or conductive paint");
  expect(whatsOf({ shield: false })).not.toContain("copper foil or conductive paint");
  expect(whatsOf({ grounds: "star" })).toContain("solder tag");
  expect(whatsOf({})).not.toContain("solder tag");
});

it("asks for no pickup's screws in a harness", () => {
  const lines = hardwareOf(readBuild(withoutPickups(presetGuard("singles-three-way"))));
  expect(lines.filter(({ what }) => /pickup|height/.test(what))).toEqual([]);
});
