import { expect, test } from "vitest";
import { diagnose } from "../../../../src/bench/faults/diagnose.ts";
import { readBuild } from "../../../../src/build-file/read-build.ts";
import { presetGuard } from "../../../fixtures/harness.ts";

const JACK = ["jack.tip", "jack.sleeve"] as const;

test("a reading without a name is told by where it was taken and how the controls stood, a push-pull up or down", () => {
  const guard = readBuild(presetGuard("hss-push-pull-split"));
  const shaft = Object.keys(guard.parts).find((name) => "drives" in guard.parts[name]!)!;
  const told = (settings: Record<string, number | string>, ohms: number) =>
    diagnose(guard, { readings: [{ between: JACK, settings, ohms }] }).summary;
  expect(told({ lever: 1, [`${shaft}.s`]: "up" }, 7900)).toContain(`the jack, lever 1, ${shaft}.s up shows 7.9 kΩ`);
  expect(told({ lever: 5, volume: 0 }, 90_000)).toContain(`the jack, lever 5, ${shaft}.s down, volume 0 shows 90 kΩ`);
});
