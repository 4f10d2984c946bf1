import { describe, expect, it } from "vitest";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import type { HeardCoil } from "../../../src/measure/emf/emf-slope.ts";
import { coilWithin } from "../../../src/measure/emf/known-coil.ts";
import { metalAbout } from "../../../src/measure/methods/exciter.ts";
import type { CoilValues } from "../../../src/response/coil-ladder.ts";
import { createNormal } from "../../choice/fit/known-coils.ts";
import { bare, exciterAt, heardFrom, pole, product, ROD_COIL, shelf } from "../simulated-metal.ts";
import { COIL, type Complex, over, times } from "../simulated-pickup.ts";
import { hissed } from "../simulated-reading.ts";

const INPUT = { resistance: 1e6, capacitance: 150e-12 };

function heard(coil: CoilValues, law: (hz: number) => Complex, told: CoilValues = coil, noise = 1e-4): HeardCoil {
  const through = heardFrom(coil, product(exciterAt(3400), law), INPUT);
  return { ...coilWithin(told, INPUT, 0.02), heard: hissed(through, createNormal(5), noise) };
}

const found = (pickup: HeardCoil, reference: HeardCoil) =>
  metalAbout(pickup, { kind: "coil", ...reference }, NO_CHECKPOINT);
const more = (factor: number) => ({ ...ROD_COIL, inductance: factor * ROD_COIL.inductance });
const covered = heard(COIL, pole(3500));

describe("what metal takes of a pickup's EMF", () => {
  it("is refused over a reference coil of quite other values, and over one that has the metal itself", () => {
    expect(() => found(covered, heard(ROD_COIL, bare, more(2)))).toThrow(
      /^reference: no metal comes nearer to the slope than [\d.]+ dB; expected at most 0.55 dB. One coil's values/,
    );
    expect(() => found(heard(COIL, bare), heard(ROD_COIL, pole(3500)))).toThrow(
      /which rises at its end, as no metal makes it/,
    );
  });

  it("is told as strained over a reference coil whose inductance is off by a few of its errors", () => {
    expect(found(covered, heard(ROD_COIL, bare)).notes.join()).not.toContain("moved by");
    expect(found(covered, heard(ROD_COIL, bare, more(1.15))).notes.join()).toMatch(
      /fits only with a coil's values moved by [3-9]\.\d of their standard deviations/,
    );
  });

  it("is told without a reference coil, through an integrator, and refused where its corner is taken for another", () => {
    const through = (hz: number) =>
      times(heardFrom(COIL, product(exciterAt(9000), pole(3500)), INPUT)(hz), over([20, 0], [1, hz / 300]));
    const pickup = { ...coilWithin(COIL, INPUT, 0.02), heard: hissed(through, createNormal(8), 1e-4) };
    const told = (cornerHz: number) =>
      metalAbout(pickup, { kind: "integrator", cornerHz, exciterCornerHz: 9000 }, NO_CHECKPOINT).values[0]!;
    const { low, high } = told(300);
    expect([low < 3500, high > 3500]).toEqual([true, true]);
    expect(() => told(30)).toThrow(/^reference: /);
  });

  it("is refused where noise leaves no treble, with what to do", () => {
    expect(() => found(heard(COIL, bare, COIL, 0.03), heard(ROD_COIL, bare))).toThrow(
      /^unloaded: \d+ of its frequencies stand above the noise.*Bring the exciter nearer/,
    );
  });

  it("is said to be perhaps nothing where the exciter may have made as much", () => {
    const may = "it may be nothing";
    expect(found(heard(COIL, shelf(1500, 0.8)), heard(ROD_COIL, bare)).notes.join()).toContain(may);
    expect(found(heard(COIL, shelf(1500, 2)), heard(ROD_COIL, bare)).notes.join()).not.toContain(may);
  });
});
