import { expect, it } from "vitest";
import { resonanceHz } from "../choice/fit/lossless-resonance.ts";
import { guardWith, level, peakOver80Hz } from "./one-pickup.ts";

// A maker gives 2.4 H with 300 pF as about 6000 Hz and with a 2400 pF coiled cord as a bit over 2000 Hz: 1/(2π√LC).
it.each([
  [300e-12, 5931],
  [2400e-12, 2097],
])("2.4 H with %d F across resonates at %d Hz", (capacitance, hertz) => {
  const coil = { resistance: 1, inductance: 2.4, capacitance, loss: undefined };
  const across = { resistance: Number.POSITIVE_INFINITY, capacitance: 0 };
  expect(resonanceHz(coil, 0, { peakOf: "response", across })).toBeCloseTo(hertz, 0);
});

// Cables of 300 to 2400 pF on a single coil, computed from the circuit by other means. 20 ft at 33 and 45 pF/ft are the 660 and 900 pF.
it.each([
  [{ length: "3m", capacitance: "100pF/m" }, 4420, 2.4],
  [{ length: "20ft", capacitance: "33pF/ft" }, 3450, -1.1],
  [{ length: "20ft", capacitance: "45pF/ft" }, 3060, -4.1],
  [{ length: "12m", capacitance: "200pF/m" }, 1990, -14.0],
])("with %o the peak stands at %d Hz and 5 kHz at %d dB", (cable, hertz, decibels) => {
  const guard = guardWith({ cable });
  expect(Math.abs(peakOver80Hz(guard)!.frequency / hertz - 1)).toBeLessThan(0.02);
  expect(Math.abs(level(guard, {}, 5000) - decibels)).toBeLessThan(0.3);
});
