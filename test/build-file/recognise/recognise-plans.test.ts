import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { pickupType } from "../../../src/build-file/catalogue/pickup-types.ts";
import { expandBuild } from "../../../src/build-file/expand.ts";
import type { PlanInput } from "../../../src/build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { type Recognised, recognise } from "../../../src/build-file/recognise/recognise.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";
import { PresolderError } from "../../../src/errors.ts";
import { effort } from "../../effort.ts";
import { anyPlan } from "../any-plan.ts";
import { anySeeds, exchanged, otherRoutes, renamed, turnsIn } from "./altered-guards.ts";
import { normalPlan } from "./normal-plan.ts";
import { expectSameSound } from "./same-sound.ts";

const expand = (plan: PlanInput) => expandBuild({ presolder: 1, plan });

function found(guard: BuildInput, hint?: PlanInput): Recognised {
  const answer = recognise(guard, hint);
  if (answer.plan === null) throw new Error(answer.why);
  return answer;
}

const normal = (plan: PlanInput) =>
  normalPlan(plan, (name) => Object.keys(pickupType(plan.pickups[name] as string)!.coils)[0]!);

/** Plans of the generator that can be wired. */
const wiredPlan = anyPlan
  .map((plan): { plan: PlanInput; guard: BuildInput } | undefined => {
    try {
      return { plan: plan as PlanInput, guard: expand(plan as PlanInput) };
    } catch (error) {
      if (error instanceof PresolderError) return undefined;
      throw error;
    }
  })
  .filter((wired) => wired !== undefined);

/** Calls every part by a name that says nothing of it. */
function anonymous(guard: BuildInput): Map<string, string> {
  return new Map(Object.keys(guard.parts).map((name, i) => [name, `x${(i * 7) % 31}-${i}`]));
}

describe.each(PLAN_PRESETS)("the guard of the plan $id", ({ plan }) => {
  const guard = expand(plan);

  test("is recognised as that plan in its normal form, whatever its wires' order and whatever is hinted at", () => {
    for (const hint of [undefined, plan, PLAN_PRESETS[0]!.plan]) {
      const { plan: back, edits, names } = found(guard, hint);
      expect(back).toEqual(normal(plan));
      expect(edits).toEqual([]);
      for (const [name, own] of Object.entries(names)) expect(own).toBe(name);
    }
    expect(found({ ...guard, wires: guard.wires.toReversed() }).plan).toEqual(normal(plan));
  });

  test("is recognised with each of its parts turned round that may be", () => {
    for (const turn of turnsIn(guard)) {
      const { plan: back, edits } = found(exchanged(guard, ...turn));
      expect(edits, JSON.stringify(turn)).toEqual([]);
      expect(expand(back), JSON.stringify(turn)).toEqual(expand(normal(plan)));
    }
  });
});

test("any plan's guard is recognised as the plan's normal form", () => {
  fc.assert(
    fc.property(wiredPlan, ({ plan, guard }) => {
      const { plan: back, edits } = found(guard);
      expect(back).toEqual(normal(plan));
      expect(edits).toEqual([]);
    }),
    { numRuns: effort(200, 2000) },
  );
});

test("any plan's guard is recognised under other names, in another order and by other routes, and sounds the same", () => {
  fc.assert(
    fc.property(wiredPlan, anySeeds, ({ guard }, seeds) => {
      const names = anonymous(guard);
      const turns = turnsIn(guard).filter((_, i) => seeds[i % seeds.length]! % 2);
      const other = otherRoutes(renamed(exchanged(guard, ...turns.flat()), names), seeds);
      const back = found(other);
      expect(back.edits).toEqual([]);
      expect(new Set(Object.values(back.names))).toEqual(new Set(Object.keys(other.parts)));
      expectSameSound(other, expand(back.plan), back.names);
    }),
    { numRuns: effort(60, 800) },
  );
});

describe("what metal takes of a pickup", () => {
  const plan = (coils: object): PlanInput =>
    ({
      ...PLAN_PRESETS.find(({ id }) => id === "one-humbucker")!.plan,
      pickups: { bridge: { type: "humbucker-medium", coils } },
    }) as PlanInput;

  test.each([
    ["none", []],
    ["a cover besides its steel", [{ shelf: 1370, depth: 1.4 }, { pole: 10_500 }]],
    ["a can", { shelf: 2760, depth: 12.7 }],
  ])("is a change to its type: %s", (_, shielding) => {
    const changed = plan({ slug: { shielding }, screw: { shielding } });
    expect(found(expand(changed)).plan?.pickups).toEqual(changed.pickups);
  });

  test("of a guard from before types had any is none", () => {
    const guard = structuredClone(expand(plan({})));
    const coils = (guard.parts.bridge as { coils: Record<string, { shielding?: unknown }> }).coils;
    for (const coil of Object.values(coils)) delete coil.shielding;
    const back = found(guard).plan!;
    expect(back.pickups).toEqual(plan({ slug: { shielding: [] }, screw: { shielding: [] } }).pickups);
    expectSameSound(guard, expand(back), {});
  });
});
