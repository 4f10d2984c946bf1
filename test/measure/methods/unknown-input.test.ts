import { expect, it } from "vitest";
import { fitImpedance } from "../../../src/choice/fit/fit-impedance.ts";
import { impedanceBehind, type Point, tableOf } from "../../../src/measure/methods/behind-resistor.ts";
import { requirePart } from "../../../src/measure/methods/part-kind.ts";
import { capacitorOf, resistorOf } from "../../../src/measure/methods/part-values.ts";
import {
  capacitanceBehindUnknown,
  coilBehindUnknown,
  inputImpedance,
  lossBehindUnknown,
  resistanceBehindUnknown,
  underInput,
  unknownInputNotes,
} from "../../../src/measure/methods/unknown-input.ts";
import { createNormal } from "../../choice/fit/known-coils.ts";
import {
  capacitorPart,
  coilPart,
  JIG_HZ,
  JIG_INPUT,
  jigRatios,
  nothing,
  type Part,
  resistorPart,
} from "../simulated-jig.ts";
import { COIL } from "../simulated-pickup.ts";

const normal = createNormal(13);
const OHMS = 470e3;
const parallel =
  (one: Part, other: Part): Part =>
  (hz) => {
    const [a, b] = [one(hz), other(hz)];
    return [a[0] + b[0], a[1] + b[1]];
  };

function pointsOf(part: Part, isStated: boolean, ohms = OHMS): Point[] {
  const input = isStated ? Array.from(JIG_HZ, (hz) => inputImpedance(JIG_INPUT, hz)) : undefined;
  return impedanceBehind(jigRatios(ohms, part, normal), JIG_HZ, ohms, { input });
}

it("an input that nobody measured is in a coil's capacitance and loss, and their ranges say so", () => {
  const models = ["section-and-resistor"] as const;
  const { values } = fitImpedance(tableOf(pointsOf(coilPart, false)), { models });
  const at = (all: typeof values, name: string) => all.find((each) => each.name === name)!;
  const told = at(values, "capacitance");
  expect(told.low).toBeGreaterThan(COIL.capacitance);
  const wide = coilBehindUnknown(values);
  expect(at(wide, "capacitance").low).toBeLessThan(COIL.capacitance);
  expect(at(wide, "capacitance").standardError).toBeGreaterThan(10 * told.standardError);
  // The input's megohm: the coil itself has nothing across it.
  expect(at(values, "loss.1.resistance").high).toBeLessThan(1.3e6);
  expect(at(wide, "loss.1.resistance").high).toBeGreaterThan(10e6);
  expect(at(wide, "inductance")).toEqual(at(values, "inductance"));
});

it("an input that nobody stated widens a coil's values under loads too, and one that was is said to be taken as it is", () => {
  const { values } = fitImpedance(tableOf(pointsOf(coilPart, false)), { models: ["section-and-resistor"] });
  const farads = (all: typeof values) => all.find(({ name }) => name === "capacitance")!;
  const unstated = underInput({ values, notes: ["as it is"] }, false);
  expect(unstated.notes).toEqual(["as it is", expect.stringMatching(/Nobody said.*widened/)]);
  expect(farads(unstated.values).low).toBeLessThan(COIL.capacitance);
  const stated = underInput({ values, notes: [] }, true);
  expect([stated.values, stated.notes]).toEqual([values, [expect.stringMatching(/as stated.*10 pF/)]]);
});

it("an input as stated is taken out of a coil", () => {
  const { values, lowFrequencyInductance } = fitImpedance(tableOf(pointsOf(coilPart, true)), {
    models: ["one-section"],
  });
  const { low, high } = values.find(({ name }) => name === "capacitance")!;
  expect(low).toBeLessThan(COIL.capacitance);
  expect(high).toBeGreaterThan(COIL.capacitance);
  expect(lowFrequencyInductance.value).toBeCloseTo(4.08, 1);
});

it("a lead, a pot and a capacitor's loss have the input's share in their errors, or not at all where it is stated", () => {
  const [farads, ohms] = [500e-12, 500e3];
  const lead = capacitorOf(pointsOf(capacitorPart(farads), false));
  expect(lead.capacitance!.value - farads).toBeGreaterThan(20 * lead.capacitance!.standardError);
  const wide = capacitanceBehindUnknown(lead.capacitance!);
  expect(wide.value - farads).toBeLessThan(wide.standardError);
  const loss = lossBehindUnknown(lead.lossFactor!, lead.capacitance!.value);
  expect(Math.abs(loss.value - 0.01)).toBeLessThan(1.5 * loss.standardError);
  const pot = resistorOf(pointsOf(resistorPart(ohms), false));
  expect(pot.resistance!.value).toBeLessThan(0.7 * ohms);
  const track = resistanceBehindUnknown(pot.resistance!);
  expect(ohms - track.value).toBeLessThan(2 * track.standardError);
  expect(capacitorOf(pointsOf(capacitorPart(farads), true)).capacitance!.value / farads).toBeCloseTo(1, 2);
  expect(resistorOf(pointsOf(resistorPart(ohms), true)).resistance!.value / ohms).toBeCloseTo(1, 2);
});

it("a lead that was called a resistor: the answer says that it may be one, and that a recording without it would tell", () => {
  const lead = pointsOf(capacitorPart(500e-12), false);
  const [first] = unknownInputNotes("resistor", lead);
  // The input's own, 1 MΩ and 160 pF, with the lead's 500 pF and what its loss conducts.
  expect(first).toMatch(
    /some (9\d0 kΩ|1 MΩ) with some 660 pF across it.*so does a lead alone.*recording `open`.* tells which/,
  );
  const open = impedanceBehind(jigRatios(OHMS, capacitorPart(500e-12), normal), JIG_HZ, OHMS, {
    open: jigRatios(OHMS, nothing, normal),
  });
  expect(() => requirePart("resistor", open)).toThrow(/is no resistor; it looks like a capacitor or a lead/);
  const big = unknownInputNotes("resistor", pointsOf(parallel(resistorPart(10e6), capacitorPart(400e-12)), false));
  expect(big[0]).toContain("tells which");
  for (const part of [resistorPart(250e3), resistorPart(10e3)])
    expect(unknownInputNotes("resistor", pointsOf(part, false)).join()).not.toContain("tells which");
  expect(unknownInputNotes("lead", lead).join()).not.toContain("tells which");
});

it("what lies across a resistor has no part in its value", () => {
  const ohms = 470e3;
  const told = resistorOf(pointsOf(parallel(resistorPart(ohms), capacitorPart(500e-12, 0)), true)).resistance!;
  expect(Math.abs(told.value / ohms - 1)).toBeLessThan(0.002);
  expect(Math.abs(told.value - ohms)).toBeLessThan(4 * told.standardError);
});
