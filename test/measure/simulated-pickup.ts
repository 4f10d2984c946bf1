import { type Across, coilImpedance } from "../../src/choice/fit/coil-model.ts";

/** A humbucker of steel and alnico, R + L1 + L2 ‖ R2 beside C, of the kind that was measured (open data set strayr/pickupAnalyseR-data). */
export const COIL = {
  resistance: 8140,
  inductance: 3.26,
  capacitance: 120e-12,
  loss: [{ inductance: 0.82, resistance: 11_300 }],
};
export const INPUT: Across = { resistance: 1e6, capacitance: 30e-12 };
export const LOAD: Across = { resistance: 200e3, capacitance: 470e-12 };

export type Complex = [re: number, im: number];
export const over = ([a, b]: Complex, [c, d]: Complex): Complex => {
  const norm = c * c + d * d;
  return [(a * c + b * d) / norm, (b * c - a * d) / norm];
};
export const times = ([a, b]: Complex, [c, d]: Complex): Complex => [a * c - b * d, a * d + b * c];
const coil = (hz: number): Complex => {
  const { re, im } = coilImpedance(COIL, hz);
  return [re, im];
};
export const admittance = ({ resistance, capacitance }: Across, hz: number): Complex => [
  1 / resistance,
  2 * Math.PI * hz * capacitance,
];

/** What an exciter of a 3.4 kHz pole makes a pickup give under loads: its own slope, over 1 + Z·Y with the coil's main branch in Z. */
export const heardUnder =
  (...loads: Across[]) =>
  (hz: number): Complex => {
    const exciter = over([0, hz / 2000], [1, hz / 3400]);
    const all = loads.reduce<Complex>(
      ([re, im], load) => {
        const [g, b] = admittance(load, hz);
        return [re + g, im + b];
      },
      [0, 0],
    );
    const [re, im] = times(coil(Math.max(hz, 1)), all);
    // V = V_open / (1 + Z·Y); the open voltage of the coil itself is its own 1/(1 + Z_main·jωC).
    const own = 2 * Math.PI * hz * COIL.capacitance;
    const z = coil(Math.max(hz, 1));
    // 1 / (1 + Z_main·jωC) = 1 − Z·jωC
    const open: Complex = [1 + z[1] * own, -z[0] * own];
    return times(exciter, over(open, [1 + re, im]));
  };
