import { describe, expect, it } from "vitest";
import { NO_CHECKPOINT } from "../../../src/checkpoint.ts";
import { emfSlope, type HeardCoil, type Reference } from "../../../src/measure/emf/emf-slope.ts";
import { fitMetal } from "../../../src/measure/emf/fit-metal.ts";
import { coilWithin } from "../../../src/measure/emf/known-coil.ts";
import type { CoilValues } from "../../../src/response/coil-ladder.ts";
import { createNormal } from "../../choice/fit/known-coils.ts";
import { effort } from "../../effort.ts";
import { bare, exciterAt, heardFrom, pole, product, ROD_COIL, shelf } from "../simulated-metal.ts";
import { COIL, type Complex } from "../simulated-pickup.ts";
import { hissed } from "../simulated-reading.ts";

const INPUT = { resistance: 1e6, capacitance: 150e-12 };
const NOISE = 1e-4;
const PRECISION = 0.02;
const TRIALS = effort(3, 60);
/** Of 60, 57 are expected, with a standard deviation of 1.7; of 3, one run in a hundred has fewer than 2. */
const LEAST_INSIDE = effort(2, 52);

type Law = (hz: number) => Complex;

/** Values as somebody else found them, each off by its own chance. */
function misread<Coil extends CoilValues>(coil: Coil, normal: () => number): Coil {
  const off = () => 1 + PRECISION * normal();
  return { ...coil, inductance: coil.inductance * off(), capacitance: coil.capacitance * off() };
}

function heard(coil: CoilValues, law: Law, normal: () => number, told = misread(coil, normal)): HeardCoil {
  const through = heardFrom(coil, product(exciterAt(3400), law), INPUT);
  return { ...coilWithin(told, INPUT, PRECISION), heard: hissed(through, normal, NOISE) };
}

const found = (law: Law, normal: () => number, reference?: Reference) =>
  fitMetal(
    emfSlope(heard(COIL, law, normal), reference ?? { kind: "coil", ...heard(ROD_COIL, bare, normal) }),
    NO_CHECKPOINT,
  );

describe.each([
  ["a cover of 3.5 kHz", pole(3500), "pole", { "0.pole": 3500 }],
  ["steel that takes 2 dB above 1.4 kHz", shelf(1400, 2), "shelf", { "0.shelf": 1400, "0.depth": 2 }],
  [
    "steel under a cover",
    product(shelf(1400, 3), pole(6000)),
    "pole-and-shelf",
    { "0.shelf": 1400, "0.depth": 3, "1.pole": 6000 },
  ],
  ["no metal", bare, "none", {}],
] as const)("%s, recorded many times with coils known to 2 %%", (_, law, name, truth) => {
  it("is told by name, and its values lie in their ranges of 95 %", () => {
    const normal = createNormal(31);
    const fits = Array.from({ length: TRIALS }, () => found(law, normal));
    const named = fits.filter((fit) => fit.law === name);
    expect(named.length).toBeGreaterThanOrEqual(LEAST_INSIDE);
    for (const [key, value] of Object.entries(truth)) {
      const inside = named.filter(({ values }) => {
        const told = values.find((each) => each.name === key)!;
        return told.low <= value && value <= told.high;
      });
      expect(inside.length, key).toBeGreaterThanOrEqual(LEAST_INSIDE);
    }
  });
});

/** dB over a coil on alnico rods under the same exciter at these frequencies, of the open data set strayr/pickupAnalyseR-data, reduced. */
const MEASURED_HZ = [200, 500, 1000, 2000, 3000, 4000, 6000, 8000];
const NEPERS_PER_DB = Math.LN10 / 20;
/** What its single readings scatter by. */
const READ_TO_DB = 0.15;

describe("measured coils' slopes", () => {
  it.each([
    ["a small single coil's cover", [0, -0.2, -0.8, -1.9, -3.2, -4.6, -6.8, -8.8], "pole", 3010, 0.1],
    ["a closed can", [0, -0.8, -2.3, -4.8, -6.5, -7.9, -10.2, -11.1], "shelf", 2760, 0.25],
    ["a base plate", [0, -0.4, -0.9, -1.7, -2.1, -2.3, -2.2, -2.3], "shelf", 1230, 0.25],
  ] as const)("of %s give the corner that the catalogue has of its kind", (_, decibels, law, hertz, within) => {
    const slope = {
      frequenciesHz: MEASURED_HZ,
      nepers: decibels.map((each) => each * NEPERS_PER_DB),
      noise: decibels.map(() => READ_TO_DB * NEPERS_PER_DB),
      moves: [],
    };
    const fit = fitMetal(slope, NO_CHECKPOINT);
    expect(fit.law).toBe(law);
    expect(Math.abs(fit.values[0]!.value / hertz - 1)).toBeLessThan(within);
  });
});
