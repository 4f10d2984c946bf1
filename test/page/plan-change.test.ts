import { expect, test } from "vitest";
import { PLAN_PRESETS } from "../../src/build-file/plans/presets.ts";
import { changedPlan } from "../../src/page/engine/plan-reader.ts";
import { readSource } from "../../src/page/engine/source-reader.ts";
import { createAppStore } from "../../src/page/state/app-state.ts";
import { Editor } from "../../src/page/state/editor.ts";
import type { BuildSource } from "../../src/page/state/reading.ts";
import { presetGuard } from "../fixtures/harness.ts";

const besides = (id: string, field: string, value: string) => {
  const { plan } = PLAN_PRESETS.find((each) => each.id === id)!;
  const change = changedPlan({ source: presetGuard(id) as unknown as BuildSource, plan, field, value });
  return "besides" in change ? change.besides : change;
};

test.each([
  [
    "hss-push-pull-split",
    "pickups.bridge",
    "humbucker-vintage",
    "no longer there: Split the bridge: push-pull on the lower tone",
  ],
  ["hss-push-pull-split", "split.bridge", "none", ""],
  ["hss-push-pull-split", "pickups.bridge", "humbucker-hot", ""],
  ["hss-push-pull-split", "layout", "lever-5-one-tone", "now Split the bridge: push-pull on the tone"],
  [
    "humbuckers-many-sounds",
    "layout",
    "one-pickup",
    "no longer there: Phase of the neck: push-pull on the upper tone; now Coils of the bridge in series or parallel: push-pull on the tone",
  ],
])("%s, %s set to %s is told with %j", (id, field, value, told) => {
  expect(besides(id, field, value)).toBe(told);
});

test("what went with a change is told behind its wires and parts", async () => {
  const store = createAppStore();
  const editor = new Editor(store, { read: async (source) => readSource(source) });
  const guard = presetGuard("hss-push-pull-split") as unknown as BuildSource;
  await editor.open(guard);
  await editor.rework((source) => ({ ...source, wires: source.wires.slice(1) }), "no longer there: a split");
  expect(store.state.changed).toBe("1 wire taken out; no longer there: a split");
  await editor.undo();
  expect(store.state.changed).toBe("");
});
