import type { Point } from "./behind-resistor.ts";

/** A value with its standard error, SI units. */
export interface Value {
  readonly value: number;
  readonly standardError: number;
}

/**
 * The mean of what each point says, each by its own error; its own is what the points scatter by where that is more.
 * @returns undefined without points
 */
function weighted(says: readonly Value[]): Value | undefined {
  if (says.length === 0) return undefined;
  const weights = says.map(({ standardError }) => 1 / standardError ** 2);
  const whole = weights.reduce((sum, each) => sum + each, 0);
  const value = says.reduce((sum, each, i) => sum + weights[i]! * each.value, 0) / whole;
  const chiSquare = says.reduce((sum, each, i) => sum + weights[i]! * (each.value - value) ** 2, 0);
  const strain = Math.max(1, chiSquare / Math.max(1, says.length - 1));
  return { value, standardError: Math.sqrt(strain / whole) };
}

const between = (points: readonly Point[], fromHz: number, toHz: number) =>
  points.filter(({ hz }) => hz >= fromHz && hz <= toHz);

/** Admittance parallel to a point's impedance. */
function admittance({ re, im, sd, hz }: Point) {
  const square = re * re + im * im;
  return { conductance: re / square, susceptance: -im / square, sd: sd / square, omega: 2 * Math.PI * hz };
}

/** A capacitor's value is its at 1 kHz; its own inductance and an input's remains lie far from there. */
export const CAPACITOR_FROM_HZ = 300;
const CAPACITOR_TO_HZ = 3000;

/** C = B/ω and tan δ = G/B of what a capacitor or a lead shows about 1 kHz. */
export function capacitorOf(points: readonly Point[]): { capacitance?: Value; lossFactor?: Value } {
  const near = between(points, CAPACITOR_FROM_HZ, CAPACITOR_TO_HZ).map(admittance);
  const positive = near.filter(({ susceptance }) => susceptance > 0);
  if (positive.length < near.length / 2) return {};
  const capacitance = weighted(
    positive.map(({ susceptance, sd, omega }) => ({ value: susceptance / omega, standardError: sd / omega })),
  );
  const lossFactor = weighted(
    positive.map(({ conductance, susceptance, sd }) => ({
      value: conductance / susceptance,
      standardError: sd / susceptance,
    })),
  );
  return { ...(capacitance && { capacitance }), ...(lossFactor && { lossFactor }) };
}

/** A wirewound resistor's inductance is nothing yet, and a wider stretch would tell little more. */
const RESISTOR_TO_HZ = 200;

/** R = 1/G of what a resistor or a pot's track shows: whatever capacitance lies across it has no part in that. */
export function resistorOf(points: readonly Point[]): { resistance?: Value } {
  const conducting = between(points, 0, RESISTOR_TO_HZ)
    .map(admittance)
    .filter(({ conductance }) => conductance > 0);
  const resistance = weighted(
    conducting.map(({ conductance, sd }) => ({ value: 1 / conductance, standardError: sd / conductance ** 2 })),
  );
  return resistance ? { resistance } : {};
}
