import { expect, it } from "vitest";
import { rigDoubt } from "../../../src/examine/answer/rig-doubt.ts";
import type { Take } from "../../../src/examine/takes/take.ts";

const FREQUENCIES_HZ = Float64Array.of(100, 1000, 5000);
const take = (re: readonly number[], through: Take["through"] = "jack"): Take => ({
  settings: { dials: {}, switches: {} } as unknown as Take["settings"],
  through,
  frequenciesHz: FREQUENCIES_HZ,
  re: Float64Array.from(re),
  im: new Float64Array(3),
  sd: new Float64Array(3).fill(5e-4),
  hasReference: true,
});
const COIL = take([0.07, 0.4, 0.8]);

it("doubts the rig, before any wire, where no take at the jack hears anything", () => {
  const silent = take([0, 0, 0]);
  expect(rigDoubt([silent, silent])).toMatch(/^Before anything is opened.*not plugged in, or muted/);
  expect(rigDoubt([silent, COIL])).toBeUndefined();
});

it("doubts it where both inputs hear the same in every take, and not where only some do, as with a hot lead off", () => {
  const same = take([1.03, 1.033, 1.028]);
  expect(rigDoubt([same, same])).toMatch(/^Before anything is opened.*does not lie between them/);
  expect(rigDoubt([same, COIL])).toBeUndefined();
  // An input of a megohm with its lead, behind 47 kΩ.
  expect(rigDoubt([take([0.955, 0.953, 0.9])])).toBeUndefined();
});

it("says nothing of takes by a small coil alone", () => {
  expect(rigDoubt([take([0, 0, 0], { pickup: "neck", coil: "coil" })])).toBeUndefined();
});
