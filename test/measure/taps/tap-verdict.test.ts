import { expect, it } from "vitest";
import { planTaps } from "../../../src/measure/taps/plan-taps.ts";
import type { TapCell } from "../../../src/measure/taps/tap-cells.ts";
import { tapVerdict } from "../../../src/measure/taps/tap-verdict.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";

const { build } = scenarioBuilds.find(({ name }) => name === "tone-before-or-after-volume")!;
const [, , ...steps] = planTaps(build).slice(0, 4);

/** Both pickups in the position that lets both through. */
const verdictOf = (...cells: readonly Partial<TapCell>[]) =>
  tapVerdict(build, {
    departures: [],
    cells: steps.slice(0, cells.length).map((step, i) => ({
      heard: { step, swings: 6, floor: -70, level: -20, sign: 1, certainty: 0.99, isClipped: false },
      isExpected: true,
      sounds: true,
      chance: 1,
      agrees: true,
      over: 0,
      ...cells[i],
    })),
  });

it("calls a guard as drawn no further than taps told it", () => {
  expect(verdictOf({}, {})).toEqual({
    verdict: "as-drawn",
    title: "As drawn: every row sounds where it should, and swings as it should.",
  });
  expect(verdictOf({}, { agrees: undefined })).toEqual({
    verdict: "unclear",
    title: "Every row sounds where it should; which way the bridge swings these taps do not tell.",
  });
  expect(verdictOf({ agrees: undefined }, { agrees: undefined }).title).toMatch(
    /which way the neck and bridge swing these/,
  );
  expect(verdictOf({}, { sounds: undefined }).verdict).toBe("unclear");
});

it("asks no side of the only row there is", () => {
  expect(verdictOf({ agrees: undefined })).toEqual({
    verdict: "as-drawn",
    title: "As drawn: every row sounds where it should.",
  });
});
