import { expect, it } from "vitest";
import { Controls, type Settings } from "../../../src/build-file/settings.ts";
import { decibels } from "../../../src/decibels.ts";
import { foretoldTaps } from "../../../src/measure/taps/foretold-taps.ts";
import type { HeardTap } from "../../../src/measure/taps/hear-taps.ts";
import { planTaps } from "../../../src/measure/taps/plan-taps.ts";
import { tapMap } from "../../../src/measure/taps/tap-map.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";
import { createNormal } from "../../choice/fit/known-coils.ts";

const { build } = scenarioBuilds.find(
  (each) => new Controls(each.build).main?.table.positions.length === 5 && planTaps(each.build).length <= 20,
)!;
const { name } = new Controls(build).main!;
const STEPS = planTaps(build);
const FLOOR_DB = -62;

/** As hands tap a guard on which each position plays as another, with levels that differ by some dB. */
function heardWhere(plays: (position: number) => number, seed: number): HeardTap[] {
  const normal = createNormal(seed);
  const moved = (settings: Settings): Settings => ({
    ...settings,
    switches: { ...settings.switches, [name]: plays(settings.switches[name] ?? 1) },
  });
  const made = foretoldTaps(
    build,
    STEPS.map((step) => ({ ...step, settings: moved(step.settings) })),
  );
  return made.map(({ re, im, leak }, i): HeardTap => {
    const size = Math.hypot(re, im);
    const level = decibels(Math.hypot(size, leak)) - 20 + 2.5 * normal();
    const isOwn = size > leak;
    const heard = level > FLOOR_DB ? { swings: 6, level } : { swings: 0 };
    const sign = Math.sign(isOwn ? re : normal());
    return {
      step: STEPS[i]!,
      floor: FLOOR_DB,
      sign: sign < 0 ? -1 : 1,
      certainty: isOwn ? 0.97 : 0.6,
      isClipped: false,
      ...heard,
    };
  });
}

const messagesOf = (plays: (position: number) => number, seed = 3) =>
  tapMap(build, heardWhere(plays, seed)).departures.map(({ message }) => message);

const swapped = (a: number, b: number) => (position: number) => (position === a ? b : position === b ? a : position);

it("nothing is told of a guard whose positions are as drawn", () => {
  expect(messagesOf((position) => position)).toEqual([]);
});

it.each([
  [1, 2],
  [2, 3],
  [1, 5],
  [4, 5],
])("positions %d and %d that have changed places are one departure that names both", (a, b) => {
  expect(messagesOf(swapped(a, b))).toEqual([
    `Positions ${a} and ${b} of the switch are exchanged: each plays what the other should.`,
  ]);
});

it("a lever whose positions are all reversed is counted from the other end", () => {
  expect(messagesOf((position) => 6 - position)).toEqual([
    expect.stringMatching(
      /^The switch's positions are counted from the other end: position 1 plays what position 5 should/,
    ),
  ]);
});
