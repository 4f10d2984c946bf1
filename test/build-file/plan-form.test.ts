import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { auditBuild } from "../../src/bench/audit/audit.ts";
import type { PlanField } from "../../src/build-file/plans/choices/field.ts";
import { PlanForm, whyNot } from "../../src/build-file/plans/choices/plan-form.ts";
import { PLAN_OPTIONS } from "../../src/build-file/plans/choices/plan-options.ts";
import type { PlanInput } from "../../src/build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../src/build-file/plans/presets.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { casesOf, effort } from "../effort.ts";

const preset = (id: string): PlanInput => PLAN_PRESETS.find((each) => each.id === id)!.plan;
const chosen = (plan: PlanInput, steps: readonly (readonly [string, string])[]) =>
  steps.reduce((now, [id, value]) => new PlanForm(now).choose(id, value), plan);

/** What may be done with a field: values that it is not set to, and those that cannot be. */
function movesOf(field: PlanField): { value: string; reason: string | undefined }[] {
  if (field.kind === "quantity")
    return [{ value: field.dimension === "resistance" ? "330k" : "33n", reason: undefined }];
  if (field.kind === "ticks") return field.ticks.map(({ value, reason }) => ({ value, reason }));
  return field.choices.filter(({ value }) => value !== field.value).map(({ value, reason }) => ({ value, reason }));
}

/** Whether a refusal is one of those that the catalogue lists for the option; what stands in its braces is any text. */
function isListed(option: string, reason: string): boolean {
  const { reasons } = PLAN_OPTIONS.find(({ name }) => name === option)!;
  const asPattern = (text: string) =>
    text
      .split(/\{\w+\}/)
      .map((piece) => piece.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&"))
      .join(".+");
  return reasons.some((each) => new RegExp(`^${asPattern(each)}$`).test(reason));
}

describe("a plan as a form", () => {
  test.each(PLAN_PRESETS.map(({ id, plan }) => [id, plan] as const))(
    "%s: what can be chosen can be wired and then shows; what cannot says why",
    (_, plan) => {
      expect(whyNot(plan)).toBeUndefined();
      const fields = new PlanForm(plan).fields();
      expect(new Set(fields.map(({ id }) => id)).size).toBe(fields.length);
      for (const { option } of fields) expect(PLAN_OPTIONS.map(({ name }) => name)).toContain(option);
      for (const field of casesOf(fields, 12)) {
        for (const { value, reason } of casesOf(movesOf(field), 3)) {
          if (reason !== undefined) {
            expect(reason).toMatch(/[a-z]{3,}.* [a-z]{2,}/);
            continue;
          }
          const next = new PlanForm(plan).choose(field.id, value);
          expect(whyNot(next), `${field.id} ${value}`).toBeUndefined();
          const after = new PlanForm(next).fields().find(({ id }) => id === field.id);
          if (field.kind === "ticks") continue;
          expect(after && "value" in after && after.value, field.id).toBe(value);
        }
      }
    },
  );

  test("a random walk through any choices that are offered never leaves a plan that cannot be wired", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...PLAN_PRESETS),
        fc.array(fc.tuple(fc.nat(), fc.nat()), { minLength: 4, maxLength: 12 }),
        ({ plan }, steps) => {
          let now: PlanInput = plan;
          for (const [a, b] of steps) {
            const fields = new PlanForm(now).fields();
            for (const each of fields)
              for (const { reason } of movesOf(each))
                expect(reason === undefined || isListed(each.option, reason), `${each.id}: ${reason}`).toBe(true);
            const field = fields[a % fields.length]!;
            const moves = movesOf(field).filter(({ reason }) => reason === undefined);
            if (moves.length === 0) continue;
            now = new PlanForm(now).choose(field.id, moves[b % moves.length]!.value);
            expect(whyNot(now), `${field.id}`).toBeUndefined();
          }
        },
      ),
      { numRuns: effort(40, 120) },
    );
  });

  test("three single coils become HSS by one choice, and nothing is wrong with the guard", () => {
    const plan = chosen(preset("singles-neck-middle"), [["pickups", "humbucker,single,single"]]);
    expect(plan.pickups).toMatchObject({ bridge: "humbucker-medium", neck: "single-vintage" });
    const found = auditBuild(readBuild({ presolder: 1, plan }));
    expect(found.filter(({ severity }) => severity !== "note")).toEqual([]);
  });

  test("HSS with a split, a bleed and the lower knob on the bridge takes five choices", () => {
    const plan = chosen(preset("singles-neck-middle"), [
      ["pickups", "humbucker,single,single"],
      ["tone2.pickups", "bridge"],
      ["tone2.pickups", "middle"],
      ["split.bridge", "pot tone2"],
      ["trebleBleed", "parallel"],
    ]);
    expect(plan).toMatchObject({
      tones: [{ pickups: ["neck"] }, { pickups: ["bridge"], cap: "22n" }],
      split: [{ pickup: "bridge", by: "tone2" }],
      trebleBleed: { capacitance: "680p", parallel: "150k" },
    });
  });

  test("another layout keeps what still has a place and calls the pots by their new names", () => {
    const plan = chosen(preset("hss-push-pull-split"), [["layout", "lever-5-one-tone"]]);
    expect(plan).toMatchObject({ layout: "lever-5-one-tone", trebleBleed: { capacitance: "680p" } });
    expect(plan.tones).toHaveLength(1);
    const two = chosen(preset("hsh-push-pull-splits"), [["layout", "toggle-3-two-volumes"]]);
    expect(two.split).toMatchObject([
      { pickup: "neck", by: "tone" },
      { pickup: "bridge", by: "tone" },
    ]);
  });

  test("fewer knobs leave no pickup without the tone it had, and more of them take the neck first", () => {
    const tonesOf = (plan: PlanInput) => plan.tones!.map(({ pickups }) => pickups);
    const singles = preset("singles-neck-middle");
    expect(tonesOf(singles)).toEqual([["neck"], ["middle"]]);
    const one = chosen(singles, [["layout", "lever-5-one-tone"]]);
    expect(tonesOf(one)).toEqual([["neck", "middle"]]);
    const master = chosen(singles, [
      ["tone2.pickups", "bridge"],
      ["layout", "lever-5-one-tone"],
    ]);
    expect(tonesOf(master)).toEqual([undefined]);
    expect(tonesOf(chosen(master, [["layout", "lever-3-two-tone"]]))).toEqual([["neck"], ["middle", "bridge"]]);
    // The lever's second pole is taken by its splits: a knob can be on one pickup alone.
    const alone = chosen(preset("hsh-automatic-splits"), [["layout", "lever-5-one-tone"]]);
    expect(tonesOf(alone)).toEqual([undefined]);
    const split = chosen(alone, [["layout", "lever-5-two-tone"]]);
    expect(tonesOf(split)).toEqual([["neck"], ["middle"]]);
    expect(whyNot(split)).toBeUndefined();
  });

  test("two knobs change places by ticking, whichever comes first", () => {
    const tonesOf = (plan: PlanInput) => plan.tones!.map(({ pickups }) => pickups);
    const lever = chosen(preset("singles-neck-middle"), [["tone1.pickups", "middle"]]);
    expect(tonesOf(lever)).toEqual([["neck", "middle"], ["bridge"]]);
    const toggle = chosen(preset("humbuckers-two-volumes"), [
      ["tone1.pickups", "bridge"],
      ["tone1.pickups", "neck"],
    ]);
    expect(tonesOf(toggle)).toEqual([["bridge"], ["neck"]]);
    expect(whyNot(toggle)).toBeUndefined();
  });

  test("a push-pull whose pot is gone goes to the shaft that is free, and is told where there is none", () => {
    const hss = preset("hss-push-pull-split");
    expect(hss.split).toMatchObject({ pickup: "bridge", by: "tone2" });
    const one = chosen(hss, [["layout", "lever-5-one-tone"]]);
    expect(one.split).toMatchObject([{ pickup: "bridge", by: "tone" }]);
    const none = chosen(one, [["tones", "0"]]);
    expect(none.split).toMatchObject([{ pickup: "bridge", by: "volume" }]);
    const two = chosen(hss, [["pickups.bridge", "humbucker-vintage"]]);
    expect(new PlanForm(hss).extras().get("split.bridge")).toBe("Split the bridge: push-pull on the lower tone");
    expect([...new PlanForm(two).extras().keys()]).not.toContain("split.bridge");
  });

  test("no phase is offered, or kept, where a pickup never sounds beside another", () => {
    const phased = chosen(preset("singles-neck-middle"), [["phase.middle", "pot volume"]]);
    expect(chosen(phased, [["layout", "lever-5-one-tone"]]).phase).toMatchObject([{ pickup: "middle", by: "volume" }]);
    const alone = chosen(phased, [["layout", "lever-3-two-tone"]]);
    expect(alone.phase).toEqual([]);
    const offered = (plan: PlanInput) => {
      const field = new PlanForm(plan).fields().find(({ id }) => id === "phase.middle")!;
      return field.kind === "choice" ? field.choices.filter(({ reason }) => reason === undefined).length : 0;
    };
    expect(offered(alone)).toBe(1);
    expect(offered(chosen(alone, [["alwaysOn", "pot tone1"]]))).toBeGreaterThan(2);
  });

  test.each<[string, string, string, RegExp]>([
    ["hss-push-pull-split", "phase.neck", "pot tone2", /two poles/],
    ["hss-automatic-split", "phase.bridge", "pot tone", /position/],
    ["humbuckers-one-volume", "toneFeed", "after-volume", /^$|./],
  ])("%s: %s is greyed where it cannot be %s", (id, fieldId, value, reason) => {
    const field = new PlanForm(preset(id)).fields().find((each) => each.id === fieldId)!;
    const choice = field.kind === "choice" ? field.choices.find((each) => each.value === value)! : undefined;
    const tried = whyNot(new PlanForm(preset(id)).choose(fieldId, value));
    expect(choice?.reason).toBe(tried);
    if (tried !== undefined) expect(tried).toMatch(reason);
  });

  test("a value that cannot be read is refused in the plan", () => {
    const next = new PlanForm(preset("singles-no-tone")).choose("volume1.pot", "250q");
    expect(whyNot(next)).toContain("250q");
  });
});
