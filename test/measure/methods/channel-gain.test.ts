import { expect, it } from "vitest";
import type { Ratios } from "../../../src/measure/impedance/series-resistor.ts";
import { times } from "../../../src/measure/impedance/uncertain.ts";
import { impedanceBehind, requireOrder } from "../../../src/measure/methods/behind-resistor.ts";
import { inGain, requireGain, siemensOfGain, UNKNOWN_GAIN } from "../../../src/measure/methods/channel-gain.ts";
import { inputFound, inputNotes } from "../../../src/measure/methods/input-found.ts";
import { resistorOf } from "../../../src/measure/methods/part-values.ts";
import { resistanceBehindUnknown } from "../../../src/measure/methods/unknown-input.ts";
import { createNormal } from "../../choice/fit/known-coils.ts";
import { JIG_HZ, jigRatios, nothing, resistorPart } from "../simulated-jig.ts";

const normal = createNormal(5);
/** Two knobs not quite alike. */
const louder = (ratios: Ratios, gain: number) => ratios.map((each) => times(each, gain));
const alike = JIG_HZ.reduce<Ratios>((all) => [...all, { re: 1, im: 0, sd: 1e-6 }], []);

it("a second input with more gain is no swapped one where both were recorded on one point", () => {
  const gain = louder(alike, 1.17);
  const open = louder(jigRatios(10e3, nothing, normal), 1.17);
  expect(() => requireOrder(open, "open", false)).toThrow(/^open: .*swapped.*or the second input's gain stands higher/);
  requireGain(gain, "gain");
  requireOrder(inGain(open, gain), "open", true);
  const swapped = louder(jigRatios(10e3, nothing, normal), 5);
  expect(() => requireOrder(inGain(swapped, gain), "open", true)).toThrow(/^open: .*plugs over$/);
  expect(() => requireGain(swapped, "gain")).toThrow(/^gain: .*on one point/);
});

const pot = (ohms: number, resistor: number, gain: number, hasOpen: boolean) => {
  const open = hasOpen ? louder(jigRatios(resistor, nothing, normal), gain) : undefined;
  const measured = louder(jigRatios(resistor, resistorPart(ohms), normal), gain);
  return resistorOf(impedanceBehind(measured, JIG_HZ, resistor, { open })).resistance!;
};

it("a gain that nobody measured is a scale of the impedance where the input was recorded, and stands beside it where not", () => {
  const [ohms, resistor] = [220e3, 10e3];
  const scaled = pot(ohms, resistor, 1 + UNKNOWN_GAIN, true);
  expect(scaled.value / ohms / (1 + UNKNOWN_GAIN)).toBeCloseTo(1, 2);
  const through = 1 / (1 / ohms + 1e-6);
  const beside = pot(ohms, resistor, 1 - UNKNOWN_GAIN, false);
  expect(Math.abs(beside.value - through)).toBeGreaterThan(20 * beside.standardError + 0.1 * through);
  const wide = resistanceBehindUnknown(beside, siemensOfGain(resistor));
  expect(Math.abs(wide.value - through)).toBeLessThan(2 * wide.standardError + UNKNOWN_GAIN * through);
});

it("a recording without the part tells the input, and that it was made with another resistor", () => {
  const found = inputFound(jigRatios(470e3, nothing, normal), undefined, 470e3, JIG_HZ);
  expect(found.resistance! / 1e6).toBeCloseTo(1, 1);
  expect(found.capacitance! / 160e-12).toBeCloseTo(1, 1);
  expect(inputNotes(found)).toEqual([]);
  const other = inputFound(jigRatios(10e3, nothing, normal), undefined, 470e3, JIG_HZ);
  expect(inputNotes(other)).toEqual([expect.stringMatching(/hardly an input.*same resistor/)]);
});

it.each([
  ["nothing behind the resistor", 1e-3, /hardly anything is heard.*plugged in and not muted/],
  ["the same on both sides", 1.001, /both inputs hear the same.*lies between them/],
] as const)("says what may be wrong where the inputs hear %s", (_, share, why) => {
  const ratios = Array.from(JIG_HZ, () => ({ re: share, im: 0, sd: 3e-3 }));
  expect(() => impedanceBehind(ratios, JIG_HZ, 1e3, {})).toThrow(why);
});
