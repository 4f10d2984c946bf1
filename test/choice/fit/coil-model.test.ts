import { describe, expect, it } from "vitest";
import { coilImpedance, coilTransfer } from "../../../src/choice/fit/coil-model.ts";

const magnitude = ({ re, im }: { re: number; im: number }) => Math.hypot(re, im);

describe("coil circuits", () => {
  // G. Labella, Physics problems, alternating current no. 05: 6.7 kΩ, 3.4 H.
  const labella = { resistance: 6700, inductance: 3.4, capacitance: 0, loss: undefined };

  it("6.7 kΩ and 3.4 H have 9992 Ω at 347 Hz", () => {
    expect(magnitude(coilImpedance(labella, 347))).toBeCloseTo(9992, 0);
  });

  it("their reactance equals their resistance at 313.6 Hz", () => {
    const { re, im } = coilImpedance(labella, 313.63);
    expect(im / re).toBeCloseTo(1, 4);
  });

  // A first-year course problem (EGB120): 5.35 kΩ and 4.5 H into 319 pF at 2640 Hz.
  it("5.35 kΩ and 4.5 H into 319 pF give 1.651 times their EMF at 2640 Hz", () => {
    const coil = { resistance: 5350, inductance: 4.5, capacitance: 319e-12, loss: undefined };
    expect(magnitude(coilTransfer(coil, 2640))).toBeCloseTo(1.651, 3);
  });

  it("the same coil into 319 nF gives 92.85 mV at 82.5 Hz and 15.96 mV at 330 Hz for 100 mV", () => {
    const coil = { resistance: 5350, inductance: 4.5, capacitance: 319e-9, loss: undefined };
    expect(100 * magnitude(coilTransfer(coil, 82.5))).toBeCloseTo(92.85, 2);
    expect(100 * magnitude(coilTransfer(coil, 330))).toBeCloseTo(15.96, 2);
  });

  // C. E. LaForest, Characterizing Magnetic Guitar Pickups (and Other Large Inductors): 0.1 H, 210 Ω, 100 kHz.
  it("0.1 H with 25.33 pF has its impedance peak at 100 kHz, 299.2 times its reactance's share", () => {
    const coil = { resistance: 210, inductance: 0.1, capacitance: 25.33e-12, loss: undefined };
    const at = magnitude(coilImpedance(coil, 100_000));
    for (const nearby of [99_900, 100_100]) expect(magnitude(coilImpedance(coil, nearby))).toBeLessThan(at);
    // At resonance |Z| = Q·√(L/C) for a high Q.
    expect(at / Math.sqrt(0.1 / 25.33e-12)).toBeCloseTo(299.2, 0);
  });
});
