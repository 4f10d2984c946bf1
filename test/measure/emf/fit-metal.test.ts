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
/** Of 60, 57 are expected in a range of 95 %, with a standard deviation of 1.7; of 3, one in twenty has fewer than 2 with the law left out. */
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
