import { describe, expect, test } from "vitest";
import { habitsBetween } from "../../../src/bench/heights/habits/habits.ts";
import { matchingDial } from "../../../src/bench/heights/habits/matching-dial.ts";
import { PlayedGuard } from "../../../src/bench/heights/habits/played-guard.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { threeSingles } from "../../fixtures/circuits.ts";

type Coil = Readonly<Record<string, unknown>>;
const single = (coil: Coil = {}) => ({
  kind: "pickup",
  coils: { coil: { resistance: "6k", inductance: "2.4H", capacitance: "110p", ...coil } },
});
const guard = (parts: object = {}) => readBuild(threeSingles({ parts }));

describe("what a new guard changes for its player", () => {
  test("nothing but louder pickups: every position is louder by their output, and the volume goes where it is as loud as before", () => {
    const quiet = guard({ neck: single(), middle: single({ winding: "reverse" }), bridge: single() });
    const loud = guard({
      neck: single({ output: 1.5 }),
      middle: single({ output: 1.5, winding: "reverse" }),
      bridge: single({ output: 1.5 }),
    });
    const { volume, heights, tone } = habitsBetween(quiet, loud, []);
    const played = new PlayedGuard(loud);
    const before = new PlayedGuard(quiet);
    for (const { position, difference, dial, text } of volume) {
      expect(difference).toBeCloseTo(20 * Math.log10(1.5), 6);
      const turned = played.turned(played.positions[position - 1]!, ["volume"], dial!);
      expect(played.levelIn(turned)).toBeCloseTo(before.levelIn(before.positions[position - 1]!), 1);
      expect(text).toMatch(/3\.5 dB louder: where the volume stood at 10 it stands at \d\.\d/);
    }
    expect(heights).toHaveLength(4);
    // The same circuit: every dial means what it meant.
    for (const { dials } of tone) for (const { from, to } of dials) expect(Math.abs(to! - from)).toBeLessThan(0.15);
  });

  test("softer pickups: the old dial that was as loud as the new one at 10 is told", () => {
    const loud = guard({ bridge: single({ output: 2 }) });
    const quiet = guard({ bridge: single({ output: 1 }) });
    const [first] = habitsBetween(loud, quiet, []).volume;
    expect(first!.difference).toBeCloseTo(-20 * Math.log10(2), 6);
    expect(first!.text).toMatch(/6\.0 dB softer: at 10 it is as loud as the old one was at \d\.\d/);
  });

  test("a larger tone cap asks for a higher dial, to the same cutoff", () => {
    const [from, to] = [guard(), guard({ cap: { kind: "cap", capacitance: "47n" } })];
    const { tone } = habitsBetween(from, to, []);
    const played = new PlayedGuard(to);
    for (const { position, after, dials } of tone) {
      for (const { to: dial, cutoff } of dials.filter((each) => each.to !== null)) {
        const turned = played.turned(played.positions[position - 1]!, after, dial!);
        expect(Math.abs(played.cutoffIn(turned)! / cutoff - 1)).toBeLessThan(0.02);
      }
    }
    const told = tone.flatMap(({ dials }) => dials);
    expect(told.filter(({ from: old, to: now }) => now !== null && now > old).length).toBeGreaterThan(0);
  });

  test("the same guard twice: nothing changes, and the heights are left alone", () => {
    const { volume, heights } = habitsBetween(guard(), guard(), []);
    expect(heights).toEqual([expect.stringMatching(/leave the heights as they are/)]);
    for (const { text } of volume) expect(text).toMatch(/as loud as it was/);
  });

  test("only the positions that both have are compared, and that is said", () => {
    const fewer = guard({ lever: { kind: "switch", type: "lever-3" } });
    const { volume, notes } = habitsBetween(fewer, guard(), []);
    expect(volume.map(({ position }) => position)).toEqual([1, 2, 3]);
    expect(notes[0]).toMatch(/had 3 positions and the new one has 5/);
  });
});

test("a dial is found where a value is reached, the highest of several, and none where it is not", () => {
  expect(matchingDial((dial) => dial ** 2, 49, 0.1)).toBeCloseTo(7, 2);
  expect(matchingDial((dial) => Math.abs(dial - 5), 2, 0.01)).toBeCloseTo(7, 2);
  expect(matchingDial((dial) => dial, 11, 0.01)).toBeNull();
  expect(matchingDial((dial) => dial, -1, 0.01)).toBeNull();
  expect(matchingDial((dial) => (dial < 4 ? 1 : 9), 5, 0.1)).toBeNull();
  expect(matchingDial((dial) => 3 + (dial - 2) ** 2, 3, 0.01)).toBeCloseTo(2, 6);
});
