import { expect, test } from "vitest";
import { auditBuild } from "../../../src/bench/audit/audit.ts";
import { PLAN_PRESETS } from "../../../src/build-file/plans/presets.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { presetGuard } from "../../fixtures/harness.ts";

const lackingOne = PLAN_PRESETS.flatMap(({ id }) => {
  const { parts, wires, ...rest } = presetGuard(id);
  const pickups = Object.keys(parts).filter((name) => parts[name]!.kind === "pickup");
  if (pickups.length < 2) return [];
  return pickups.map((gone) => {
    const isItsOwn = (lug: string) => lug.startsWith(`${gone}.`);
    const left = Object.fromEntries(Object.entries(parts).filter(([name]) => name !== gone));
    const wiresLeft = wires.filter((wire) => {
      const [from, to] = Array.isArray(wire) ? wire : [wire.from, wire.to];
      return !isItsOwn(from) && !isItsOwn(to);
    });
    return { id, gone, build: readBuild({ ...rest, parts: left, wires: wiresLeft }) };
  });
});

test.each(lackingOne)("$id without its $gone has no short, and none of its wires is to be taken away", ({ build }) => {
  expect(auditBuild(build).map(({ code, message }) => `${code}: ${message}`)).not.toContainEqual(
    expect.stringMatching(/^hot-shorted/),
  );
});
