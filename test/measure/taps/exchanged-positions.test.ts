import { expect, it } from "vitest";
import { editBuild } from "../../../src/bench/faults/edits/edit-build.ts";
import { singleFaults } from "../../../src/bench/faults/kinds/single-faults.ts";
import { Controls, type Settings } from "../../../src/build-file/settings.ts";
import { decibels } from "../../../src/decibels.ts";
import { type ForetoldTap, foretoldTaps } from "../../../src/measure/taps/foretold-taps.ts";
import type { HeardTap } from "../../../src/measure/taps/hear-taps.ts";
import { planTaps, type TapStep } from "../../../src/measure/taps/plan-taps.ts";
import { tapMap } from "../../../src/measure/taps/tap-map.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";
import { createNormal } from "../../choice/fit/known-coils.ts";

const { build } = scenarioBuilds.find(
  (each) => new Controls(each.build).main?.table.positions.length === 5 && planTaps(each.build).length <= 20,
)!;
const { name } = new Controls(build).main!;
const STEPS = planTaps(build);
const FLOOR_DB = -62;

/** As hands tap what would be heard so, with levels that differ by some dB. */
function tapped(steps: readonly TapStep[], made: readonly ForetoldTap[], seed: number): HeardTap[] {
  const normal = createNormal(seed);
  return made.map(({ re, im, leak }, i): HeardTap => {
    const size = Math.hypot(re, im);
    const level = decibels(Math.hypot(size, leak)) - 20 + 2.5 * normal();
    const isOwn = size > leak;
    const heard = level > FLOOR_DB ? { swings: 6, level } : { swings: 0 };
    const sign = Math.sign(isOwn ? re : normal());
    return {
      step: steps[i]!,
      floor: FLOOR_DB,
      sign: sign < 0 ? -1 : 1,
      certainty: isOwn ? 0.97 : 0.6,
      isClipped: false,
      ...heard,
    };
  });
}

/** On a guard on which each position plays as another. */
function heardWhere(plays: (position: number) => number, seed: number): HeardTap[] {
  const moved = (settings: Settings): Settings => ({
    ...settings,
    switches: { ...settings.switches, [name]: plays(settings.switches[name] ?? 1) },
  });
  const played = STEPS.map((step) => ({ ...step, settings: moved(step.settings) }));
  return tapped(STEPS, foretoldTaps(build, played), seed);
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

const lever = scenarioBuilds.find(({ name }) => name === "long-cable")!.build;
const messagesOfWires = (one: string, other: string) => {
  const swapped = singleFaults(lever).find(
    ({ kind, lugs }) => kind === "switch-wires-swapped" && lugs.includes(one) && lugs.includes(other),
  )!;
  const steps = planTaps(lever);
  const made = foretoldTaps(editBuild(lever, swapped.edits), steps);
  return tapMap(lever, tapped(steps, made, 11)).departures.map(({ message }) => message);
};

it.each([
  ["lever.A2", "lever.A3", "neck", "middle"],
  ["lever.A1", "lever.A2", "middle", "bridge"],
])(
  "two wires exchanged on the lever, %s and %s, are one departure: two pickups in each other's place",
  (a, b, one, other) => {
    expect(messagesOfWires(a, b)).toEqual([
      `The ${one} and the ${other} have changed places: each is wired as the other should be.`,
    ]);
  },
);

it("both are told where taps sound the same for two pickups exchanged and a lever counted from the other end", () => {
  expect(messagesOfWires("lever.A1", "lever.A3")).toEqual([
    expect.stringMatching(
      /counted from the other end.*Or the neck and the bridge have changed places.*sound the same\.$/,
    ),
  ]);
});
