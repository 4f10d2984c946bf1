import { expect, test } from "vitest";
import { withFittingBody } from "../../../src/build-file/bodies/fitting-body.ts";
import { expandBuild } from "../../../src/build-file/expand.ts";
import type { PlanInput } from "../../../src/build-file/plans/plan-schema.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { recognise } from "../../../src/build-file/recognise/recognise.ts";
import { replan } from "../../../src/build-file/recognise/replan.ts";
import { isSamePart } from "../../../src/build-file/rewire/same-part.ts";
import type { BuildInput } from "../../../src/build-file/schema.ts";

const preset = (id: string) => PLAN_PRESETS.find((candidate) => candidate.id === id)!.plan;

function withBody(guard: BuildInput, part: string, body: string): BuildInput {
  return { ...guard, parts: { ...guard.parts, [part]: { ...guard.parts[part]!, body } as never } };
}

function recognised(guard: BuildInput) {
  const found = recognise(guard);
  if (found.plan === null) throw new Error(found.why);
  return found;
}

test("a body is nothing that a plan says, and no edit on top of it", () => {
  const guard = expandBuild({ presolder: 1, plan: preset("hss-push-pull-split") });
  expect(recognised(guard).edits).toEqual([]);
  expect(recognised(withBody(guard, "lever", "in-line-alike"))).toEqual(recognised(guard));
});

test("another plan leaves each part the body that it has, as far as its type goes with it", () => {
  const plan = preset("singles-neck-middle") as PlanInput & { volume?: unknown };
  const guard = withBody(withBody(expandBuild({ presolder: 1, plan }), "lever", "in-line-alike"), "volume", "mini");
  const { source } = replan(guard, recognised(guard), { ...plan, volume: "500k" } as PlanInput);
  expect(source.parts.lever).toMatchObject({ type: "lever-5", body: "in-line-alike" });
  expect(source.parts.volume).toMatchObject({ resistance: "500k", body: "mini" });
});

test("a part that becomes one of another type loses a body that it cannot have, and only that", () => {
  const lever = { kind: "switch", type: "lever-5", body: "open-frame", label: "Selector" };
  expect(withFittingBody({ ...lever, type: "toggle-3" })).toEqual({ ...lever, type: "toggle-3" });
  const { body: _, ...bare } = lever;
  expect(withFittingBody({ ...lever, type: "dpdt" })).toEqual({ ...bare, type: "dpdt" });
});

test("two parts that say different bodies are different parts; one that says none may be either", () => {
  const lever = (said: object) => {
    const parts = { jack: { kind: "jack" }, lever: { kind: "switch", type: "lever-5", ...said } };
    return readBuild({ presolder: 1, parts, wires: [] }).parts.lever!;
  };
  const [open, inLine] = [lever({ body: "open-frame" }), lever({ body: "in-line-alike" })];
  expect(isSamePart(open, inLine)).toBe(false);
  expect(isSamePart(open, lever({}))).toBe(true);
  expect(isSamePart(open, lever({ body: "open-frame" }))).toBe(true);
});
