import { expect, it } from "vitest";
import { guardWith, level, peakOver80Hz } from "./one-pickup.ts";

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
