import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { auditBuild } from "../../../src/bench/audit/audit.ts";
import { parseLongForm } from "../../../src/build-file/build-file.ts";
import { PICKUP_TYPE_NAMES, pickupType } from "../../../src/build-file/catalogue/pickup-types.ts";
import { expandBuild } from "../../../src/build-file/expand.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";
import { hotCoilIn, swapPickup, turnPickup } from "../../../src/build-file/swap/swap-pickup.ts";
import { PresolderError } from "../../../src/errors.ts";
import { Wiring } from "../../../src/wiring/nets.ts";
import { casesOf, effort } from "../../effort.ts";
import { presetGuard } from "../../fixtures/harness.ts";

/** Which lugs wires join, whatever the order and the routes. */
function netsOf(guard: BuildInput): string[] {
  const wiring = new Wiring(parseLongForm(guard));
  const { netOfLug, count } = wiring.wiredNets();
  const nets = Array.from({ length: count }, (): string[] => []);
  for (const [index, lug] of wiring.lugs.lugs.entries()) nets[netOfLug[index]!]!.push(lug.name);
  return nets
    .map((net) => net.sort().join(" "))
    .filter((net) => net.includes(" "))
    .sort();
}

const OPTIONS = ["split", "seriesParallel", "phase", "seriesLink"] as const;
const swaps = PLAN_PRESETS.filter(({ plan }) => OPTIONS.every((option) => !(option in plan))).flatMap((preset) =>
  Object.keys(preset.plan.pickups).flatMap((pickup) => PICKUP_TYPE_NAMES.map((type) => ({ preset, pickup, type }))),
);

describe("a pickup in another's place", () => {
  test("has the wires of the plan that has it from the start, whichever it is and wherever", () => {
    for (const { preset, pickup, type } of casesOf(swaps, 120)) {
      const swapped = swapPickup(presetGuard(preset.id), pickup, { type });
      const plan = { ...preset.plan, pickups: { ...preset.plan.pickups, [pickup]: type } };
      const meant = expandBuild({ presolder: 1, title: preset.title, plan });
      expect(netsOf(swapped), `${preset.id}, ${type} for ${pickup}`).toEqual(netsOf(meant));
      expect(swapped.parts[pickup]).toEqual(meant.parts[pickup]);
    }
    expect(swaps.length).toBeGreaterThan(100);
  });

  test("there and back leaves the wires as they were", () => {
    for (const { preset, pickup, type } of casesOf(swaps, 120)) {
      const guard = presetGuard(preset.id);
      const own = guard.parts[pickup] as { type: string };
      if (pickupType(own.type)!.conductors === 4) continue;
      const back = swapPickup(swapPickup(guard, pickup, { type }), pickup, { type: own.type });
      expect(netsOf(back)).toEqual(netsOf(guard));
      expect(back.parts[pickup]).toEqual(guard.parts[pickup]);
    }
  });

  test("is readable, and nothing is wrong with it, in a guard that splits or switches it", () => {
    const switched = PLAN_PRESETS.filter(({ plan }) => OPTIONS.some((option) => option in plan));
    fc.assert(
      fc.property(
        fc.constantFrom(...switched),
        fc.constantFrom(...PICKUP_TYPE_NAMES),
        fc.nat(2),
        ({ id }, type, nth) => {
          const guard = presetGuard(id);
          const pickups = Object.keys(guard.parts).filter((name) => guard.parts[name]!.kind === "pickup");
          const swapped = swapPickup(guard, pickups[nth % pickups.length]!, { type });
          const found = auditBuild(parseLongForm(swapped)).map(({ code }) => code);
          // A push-pull that split two coils has nothing to do at one.
          const broken = [
            "hot-shorted",
            "pickup-silent",
            "dead-position",
            "shield-hot",
            "coil-silent",
            "shield-floating",
          ];
          expect(
            found.filter((code) => broken.includes(code)),
            `${id}, ${type}`,
          ).toEqual([]);
        },
      ),
      { numRuns: effort(60, 150) },
    );
  });
});

describe("a single coil becomes a four-lead humbucker", () => {
  const guard = presetGuard("singles-neck-middle");
  const wiresAt = (swapped: BuildInput) => swapped.wires.filter((wire) => JSON.stringify(wire).includes('"bridge.'));

  test("hot goes to the finish of one coil, ground to the far end of the other, the inner leads meet, the metal is grounded", () => {
    expect(wiresAt(swapPickup(guard, "bridge", { type: "humbucker-medium" }))).toEqual([
      { from: "bridge.slug.finish", to: "lever.A1", how: "lead" },
      { from: "bridge.screw.finish", to: "volume.case", how: "lead" },
      { from: "bridge.slug.start", to: "bridge.screw.start", how: "lead" },
      { from: "bridge.shield", to: "volume.case", how: "lead" },
    ]);
  });

  test("metal that a braid grounded is grounded by the cable's own drain, and by a braid again on the way back", () => {
    const braided = presetGuard("humbuckers-two-volumes");
    const shield = (swapped: BuildInput) =>
      swapped.wires.find((wire) => "from" in wire && wire.from === "bridge.shield") as { how?: string } | undefined;
    const vintage = swapPickup(braided, "bridge", { type: "humbucker-vintage" });
    const medium = swapPickup(vintage, "bridge", { type: "humbucker-medium" });
    expect([shield(vintage)?.how, shield(medium)?.how]).toEqual(["braid", "lead"]);
    expect(shield(swapPickup(medium, "bridge", { type: "humbucker-vintage" }))?.how).toBe("braid");
  });

  test("the other coil is at the hot end where it is asked for", () => {
    expect(wiresAt(swapPickup(guard, "bridge", { type: "humbucker-medium", hotCoil: "screw" })).slice(0, 3)).toEqual([
      { from: "bridge.screw.start", to: "lever.A1", how: "lead" },
      { from: "bridge.slug.start", to: "volume.case", how: "lead" },
      { from: "bridge.screw.finish", to: "bridge.slug.finish", how: "lead" },
    ]);
  });

  test("leads that have traded places stay so, there and back", () => {
    const turned = {
      ...guard,
      wires: guard.wires.map((wire) =>
        "from" in wire && wire.from === "bridge.hot"
          ? { ...wire, from: "bridge.ground" }
          : "from" in wire && wire.from === "bridge.ground"
            ? { ...wire, from: "bridge.hot" }
            : wire,
      ),
    };
    const [first, second] = wiresAt(swapPickup(turned, "bridge", { type: "humbucker-medium" }));
    expect([first, second]).toMatchObject([
      { from: "bridge.slug.start", to: "lever.A1" },
      { from: "bridge.screw.start", to: "volume.case" },
    ]);
    const back = swapPickup(swapPickup(turned, "bridge", { type: "humbucker-medium" }), "bridge", {
      type: "single-medium",
    });
    expect(netsOf(back)).toEqual(netsOf(turned));
  });
});

test("one coil for two sits in the middle of them, or in the place of the one that is named", () => {
  const guard = presetGuard("humbuckers-one-volume");
  const distance = (swapped: BuildInput) =>
    (swapped.parts.neck as unknown as { coils: { coil: { distance: string } } }).coils.coil.distance;
  const own = guard.parts.neck as unknown as { coils: { screw: { distance: string } } };
  expect(distance(swapPickup(guard, "neck", { type: "p90" }))).toBe("156mm");
  expect(distance(swapPickup(guard, "neck", { type: "p90", inPlaceOf: "screw" }))).toBe(own.coils.screw.distance);
});

test("a label of one's own stays, one that named the old type names the new", () => {
  const guard = presetGuard("singles-neck-middle");
  const label = (from: BuildInput) => swapPickup(from, "bridge", { type: "p90" }).parts.bridge!.label;
  expect(label(guard)).toBe("Bridge: wide single coil on bar magnets");
  const own = {
    ...guard,
    parts: { ...guard.parts, bridge: { ...guard.parts.bridge!, label: "Loud one" } },
  } as BuildInput;
  expect(label(own)).toBe("Loud one");
});

test.each<[string, object, RegExp]>([
  ["volume", { type: "p90" }, /^build\.parts\.volume: expected a pickup/],
  ["bridge", { type: "humbucker-medum" }, /did you mean "humbucker-medium"/],
  ["bridge", { type: "humbucker-medium", hotCoil: "scew" }, /^hotCoil: .*did you mean "screw"/],
  ["bridge", { type: "p90", inPlaceOf: "slug" }, /^inPlaceOf: there is no coil "slug"/],
])("%s cannot become %j", (name, swap, message) => {
  expect(() => swapPickup(presetGuard("singles-neck-middle"), name, swap as never)).toThrow(PresolderError);
  expect(() => swapPickup(presetGuard("singles-neck-middle"), name, swap as never)).toThrow(message);
});

test("a pickup of four leads is turned, wires and all, and back again", () => {
  const guard = presetGuard("hss-push-pull-split");
  expect(hotCoilIn(guard, "bridge")).toBe("slug");
  const turned = turnPickup(guard, "bridge", "screw");
  expect(hotCoilIn(turned, "bridge")).toBe("screw");
  const kept = expandBuild({
    presolder: 1,
    plan: {
      ...PLAN_PRESETS.find(({ id }) => id === "hss-push-pull-split")!.plan,
      split: { pickup: "bridge", by: "tone2", keeps: "screw" },
    },
  });
  expect(netsOf(turned)).toEqual(netsOf(kept));
  expect(netsOf(turnPickup(turned, "bridge", "slug"))).toEqual(netsOf(guard));
  expect(hotCoilIn(guard, "neck")).toBeUndefined();
});
