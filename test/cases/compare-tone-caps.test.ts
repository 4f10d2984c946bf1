import { expect, it } from "vitest";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { compare } from "../../src/choice/compare/compare.ts";
import { flatDrive } from "../../src/choice/drive.ts";
import { guardWith, humpHz } from "./one-pickup.ts";

// Humps at tone 0, computed from the circuit by other means. The marking stands for the capacitor as it is printed.
it.each([
  ["102", 2523],
  ["2n2", 1906],
  ["472", 1377],
  ["223", 622],
  ["473K", 377],
  ["104", 160],
])("with a cap marked %s the hump at tone 0 stands at %d Hz", (cap, hertz) => {
  expect(Math.abs(humpHz(guardWith({ cap }), { tone: 0 }) / hertz - 1)).toBeLessThan(0.02);
});

it("22 nF against 47 nF: nobody hears it at 10, everybody at 0, and one look at the sweep says so", () => {
  const [a, b] = [guardWith({ cap: "22n" }), guardWith({ cap: "47n" })];
  const side = (guard: typeof a) => ({
    guard,
    drive: flatDrive(),
    settings: expandSweep(guard.controls, { tone: [0, 2, 5, 10] }),
  });
  const { rows, verdict } = compare(side(a), side(b), null);
  expect(rows.map((row) => row.audible)).toEqual(["another-sound", "none", "none", "none"]);
  expect(Math.abs(rows[3]!.largest.difference)).toBeLessThan(0.05);
  expect(verdict).toMatch(/^47 nF instead of 22 nF as the cap makes another sound with the tone at 0: /);
  expect(verdict).toMatch(/; with the tone at 2, 5 and 10 nobody hears it; left as they are, /);
  expect(rows[0]!.largest.frequency).toBeGreaterThan(500);
  expect(rows[0]!.largest.frequency).toBeLessThan(1000);
});
