import { describe, expect, test } from "vitest";
import type { Build } from "../../src/build-file/schema.ts";
import { guardOf, jackOhms, levelAt, longForm, SINGLE } from "./bench-guard.ts";

// How the two banks of such a lever are laid out is common practice, no source; which tones act follows from it.
const POT = { kind: "pot", resistance: "250k", taper: "audio" };
const PARTS = {
  neck: SINGLE,
  middle: SINGLE,
  bridge: SINGLE,
  lever: { kind: "switch", type: "lever-5" },
  volume: { ...POT, role: "volume" },
  toneA: { ...POT, role: "tone" },
  toneB: { ...POT, role: "tone" },
  capA: { kind: "cap", capacitance: "22n" },
  capB: { kind: "cap", capacitance: "22n" },
  jack: { kind: "jack" },
};
const COMMON_WIRES = [
  ["bridge.hot", "lever.A1"],
  ["middle.hot", "lever.A2"],
  ["neck.hot", "lever.A3"],
  ["lever.A0", "volume.3"],
  ["volume.2", "jack.tip"],
  ...["volume.1", "neck.ground", "middle.ground", "bridge.ground", "capA.b", "capB.b"].map((lug) => [
    lug,
    "jack.sleeve",
  ]),
  ["toneA.2", "capA.a"],
  ["toneB.2", "capB.a"],
];

const wired = (...wires: [string, string][]) => longForm(PARTS, [...COMMON_WIRES, ...wires]);
const SECOND_BANK: [string, string][] = [
  ["toneA.1", "lever.B3"],
  ["toneB.1", "lever.B2"],
  ["lever.B2", "lever.B1"],
];

/** The tones whose turning to 0 moves the level at 3 kHz. */
function activeTones(build: Build, lever: number): string {
  const open = levelAt(build, 3000, { lever });
  const acts = (tone: string) => Math.abs(levelAt(build, 3000, { lever, [tone]: 0 }) - open) > 0.5;
  return (
    ["toneA", "toneB"]
      .filter(acts)
      .map((name) => name.slice(-1))
      .join("+") || "none"
  );
}

const inEveryPosition = (build: Build) => [1, 2, 3, 4, 5].map((lever) => activeTones(build, lever));

describe("the tones that act, positions 1 to 5", () => {
  test.each<[string, Build, string[]]>([
    [
      "straight on the neck (A) and middle (B) lugs",
      wired(["toneA.1", "lever.A3"], ["toneB.1", "lever.A2"]),
      ["none", "B", "B", "A+B", "A"],
    ],
    [
      "straight on the neck (A) and bridge (B) lugs",
      wired(["toneA.1", "lever.A3"], ["toneB.1", "lever.A1"]),
      ["B", "B", "none", "A", "A"],
    ],
    [
      "on the second bank, commons joined, A on the neck lug and B on middle and bridge",
      wired(...SECOND_BANK, ["lever.A0", "lever.B0"]),
      ["B", "B", "B", "A+B", "A"],
    ],
    ["on the second bank, commons not joined", wired(...SECOND_BANK), ["none", "none", "none", "none", "none"]],
  ])("%s", (_, build, expected) => {
    expect(inEveryPosition(build)).toEqual(expected);
  });
});

test("no row changes the direct-current reading at the jack", () => {
  const plain = wired();
  for (const build of [
    wired(["toneA.1", "lever.A3"], ["toneB.1", "lever.A2"]),
    wired(...SECOND_BANK, ["lever.A0", "lever.B0"]),
  ])
    for (const lever of [1, 2, 3, 4, 5]) {
      expect(jackOhms(build, { lever })).toBeCloseTo(jackOhms(plain, { lever })!, 6);
      expect(jackOhms(build, { lever, tone: 0 })).toBeCloseTo(jackOhms(plain, { lever })!, 6);
    }
});

// 250 k ∥ 250 k ∥ 250 k and 250 k ∥ 250 k, worked by hand.
test("two 250 kΩ tones in position 4 load the pair as 83.3 kΩ, one in position 3 as 125 kΩ", () => {
  const tones = wired(["toneA.1", "lever.A3"], ["toneB.1", "lever.A2"]);
  /** A plain volume of the whole load's value, with no tone: the caps pass the treble. */
  const loadedBy = (pot: string) => longForm({ ...PARTS, volume: { ...POT, resistance: pot } }, COMMON_WIRES);
  // The caps' own reactance, 2.4 kΩ at 3 kHz, leaves a few hundredths of a decibel.
  const equal = (lever: number, ohms: number) => {
    const apart = levelAt(tones, 3000, { lever }) - levelAt(loadedBy(`${ohms}`), 3000, { lever });
    expect(Math.abs(apart)).toBeLessThan(0.05);
  };
  equal(4, 250_000 / 3);
  equal(3, 125_000);
});

test("the plans' assignments act as the rows say", () => {
  const plan = (first: string[], second: string[]) =>
    guardOf({
      layout: "lever-5-two-tone",
      pickups: { neck: SINGLE, middle: SINGLE, bridge: SINGLE },
      volume: "250k",
      tones: [
        { pot: "250k", cap: "22n", pickups: first },
        { pot: "250k", cap: "22n", pickups: second },
      ],
    });
  const acting = (build: Build) =>
    [1, 2, 3, 4, 5].map((lever) => {
      const open = levelAt(build, 3000, { lever });
      return [1, 2].filter((n) => Math.abs(levelAt(build, 3000, { lever, [`tone${n}`]: 0 }) - open) > 0.5).join("+");
    });
  expect(acting(plan(["neck"], ["middle"]))).toEqual(["", "2", "2", "1+2", "1"]);
  expect(acting(plan(["neck"], ["bridge"]))).toEqual(["2", "2", "", "1", "1"]);
  expect(acting(plan(["neck"], ["middle", "bridge"]))).toEqual(["2", "2", "2", "1+2", "1"]);
});
