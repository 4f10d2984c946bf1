import type { Across } from "../../src/choice/fit/coil-model.ts";
import { coilImpedance } from "../../src/choice/fit/coil-model.ts";
import type { Ratios } from "../../src/measure/impedance/series-resistor.ts";
import { ratiosOf } from "../../src/measure/methods/behind-resistor.ts";
import { TONES_HZ } from "../../src/measure/signal/multitone.ts";
import { admittance, COIL, type Complex, over } from "./simulated-pickup.ts";
import { simulatedTransfer } from "./simulated-transfer.ts";

/** An instrument input with its lead. */
export const JIG_INPUT: Across = { resistance: 1e6, capacitance: 160e-12 };

/** A part by its admittance. */
export type Part = (hz: number) => Complex;

export const coilPart: Part = (hz) => {
  const { re, im } = coilImpedance(COIL, Math.max(hz, 1));
  return over([1, 0], [re, im]);
};
export const resistorPart =
  (ohms: number): Part =>
  () => [1 / ohms, 0];
export const capacitorPart =
  (farads: number, lossFactor = 0.01): Part =>
  (hz) => {
    const b = 2 * Math.PI * hz * farads;
    return [lossFactor * b, b];
  };
export const nothing: Part = () => [0, 0];

/** What the second channel is to the first, behind a resistor over a part with the input across it. */
export const behindOhms = (ohms: number, part: Part) => (hz: number) => {
  const [g, b] = part(hz);
  const [gi, bi] = admittance(JIG_INPUT, hz);
  return over([1, 0], [1 + ohms * (g + gi), ohms * (b + bi)]);
};

/** As two channels' recordings tell it. */
export const jigRatios = (ohms: number, part: Part, normal: () => number): Ratios =>
  ratiosOf({
    before: simulatedTransfer(() => [1, 0], normal),
    behind: simulatedTransfer(behindOhms(ohms, part), normal),
  });

export const JIG_HZ = Float64Array.from(TONES_HZ);
