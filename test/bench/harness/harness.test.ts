import { describe, expect, test } from "vitest";
import { auditBuild } from "../../../src/bench/audit/audit.ts";
import { benchSheet } from "../../../src/bench/bench-sheet.ts";
import { pickupPlaces } from "../../../src/bench/harness/pickup-places.ts";
import { DEFAULT_SHEET_OPTIONS } from "../../../src/bench/sheet/options.ts";
import { parseLongForm } from "../../../src/build-file/build-file.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";
import { presetGuard, withoutPickups } from "../../fixtures/harness.ts";

const read = (guard: BuildInput) => parseLongForm(guard);
const harnessOf = (id: string) => withoutPickups(presetGuard(id));
const THREE_SINGLES = "singles-neck-middle";

/** What sits on the pickups' own leads waits for them: switches of their coils, resistors across them. */
const SWITCHED_PICKUPS = /push-pull|split|series|phase|sounds|resistor/;
const plain = PLAN_PRESETS.filter(({ title, plan }) => !SWITCHED_PICKUPS.test(`${title} ${Object.keys(plan).join()}`));

describe("a harness without pickups", () => {
  test.each(plain.map(({ id, plan }) => [id, Object.keys(plan.pickups).length]))(
    "of %s has a place for each of %i pickups and nothing wrong with it",
    (id, count) => {
      const harness = read(harnessOf(id));
      expect(pickupPlaces(harness)).toHaveLength(count);
      const found = auditBuild(harness);
      expect(found.filter(({ severity }) => severity !== "note")).toEqual([]);
      expect(found.find(({ code }) => code === "no-pickup")!.lugs).toEqual(pickupPlaces(harness));
    },
  );

  test.each(PLAN_PRESETS.map(({ id }) => id))("of %s has no fault of its own, whatever its pickups switch", (id) => {
    const found = auditBuild(read(harnessOf(id)));
    expect(found.filter(({ severity }) => severity === "fault")).toEqual([]);
  });

  test("takes the places where the guard's own pickups were", () => {
    expect(pickupPlaces(read(harnessOf(THREE_SINGLES)))).toEqual(["lever.A1", "lever.A2", "lever.A3"]);
    expect(pickupPlaces(read(harnessOf("humbuckers-two-volumes")))).toEqual(["volume1.3", "volume2.3"]);
    expect(pickupPlaces(read(harnessOf("humbuckers-independent")))).toEqual(["volume1.2", "volume2.2"]);
    expect(pickupPlaces(read(harnessOf("one-p90")))).toEqual(["volume.3"]);
  });

  test.each<[string, [string, string], string]>([
    ["the hot shorted", ["lever.A0", "volume.case"], "hot-shorted"],
    ["a place shorted", ["lever.A2", "volume.case"], "hot-shorted"],
    ["the tip shorted", ["jack.tip", "volume.case"], "hot-shorted"],
  ])("is judged: %s", (_, wire, code) => {
    const harness = harnessOf(THREE_SINGLES);
    const found = auditBuild(read({ ...harness, wires: [...harness.wires, wire] }));
    const fault = found.find((each) => each.code === code);
    expect(fault?.severity).toBe("fault");
    expect(found.flatMap(({ lugs, message }) => [...lugs, message]).join()).not.toContain("_");
  });

  test("is judged: a selector that leads nowhere", () => {
    const harness = harnessOf(THREE_SINGLES);
    const wires = harness.wires.filter(
      (wire) => !("from" in wire && wire.from === "lever.A0" && wire.to === "volume.3"),
    );
    expect(wires).toHaveLength(harness.wires.length - 1);
    expect(auditBuild(read({ ...harness, wires })).map(({ code }) => code)).toContain("dead-position");
  });

  test("without a free place says so and judges nothing", () => {
    const bare: BuildInput = { presolder: 1, parts: { jack: { kind: "jack" } }, wires: [] };
    expect(auditBuild(read(bare))).toMatchObject([{ code: "no-pickup", lugs: [] }]);
  });
});

describe("the bench of a harness", () => {
  const { readings, sheet } = benchSheet(read(harnessOf(THREE_SINGLES)), {
    ...DEFAULT_SHEET_OPTIONS,
    temperature: 20,
    drawer: [],
    probes: [],
  });
  const between = (from: string, to: string) => readings.filter((each) => each.between.join() === `${from},${to}`);

  test("meters each place to the tip, joined where the position lets it in and open elsewhere", () => {
    const ohms = between("lever.A2", "jack.tip").map((each) => each.ohms);
    expect(ohms.map((value) => value !== null && value < 10)).toEqual([false, true, true, true, false]);
    expect(ohms.filter((value) => value === null)).toHaveLength(2);
  });

  test("meters every pot from its lower end to its wiper over its turn", () => {
    for (const pot of ["volume", "tone1", "tone2"]) {
      const ohms = between(`${pot}.1`, `${pot}.2`).map((each) => each.ohms!);
      expect(ohms).toHaveLength(3);
      expect(ohms[0]).toBeLessThan(5);
      // Audio tapers stand at 15 % of 250 kΩ halfway.
      expect(ohms[1]! / 250e3).toBeCloseTo(0.15, 2);
      expect(ohms[2]).toBeGreaterThan(245e3);
    }
  });

  test("has a sheet with every joint of the harness", () => {
    const [sitting, ...others] = sheet.sittings;
    expect(others).toEqual([]);
    expect(sitting!.stages.flatMap(({ joints }) => joints).length).toBeGreaterThan(10);
  });
});

test("pickups are added later without touching a wire of the harness", () => {
  const whole = presetGuard(THREE_SINGLES);
  const harness = withoutPickups(whole);
  const added = whole.wires.filter((wire) => !harness.wires.includes(wire));
  const again = { ...harness, parts: { ...harness.parts, ...whole.parts }, wires: [...harness.wires, ...added] };
  const worth = (guard: BuildInput) =>
    auditBuild(read(guard))
      .map(({ code }) => code)
      .sort();
  expect(worth(again)).toEqual(worth(whole));
});
