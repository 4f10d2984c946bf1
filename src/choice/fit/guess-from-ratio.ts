import type { Guess } from "./coil-shapes.ts";
import type { KnownBeside } from "./fit-impedance.ts";
import { admittance, RADIANS_PER_DEGREE, type RatioSweep } from "./loaded-ratio.ts";

/** A pickup's usual values, common practice. */
const USUAL = { ohmsPerHenry: 2000, farads: 120e-12, loss: 500e3 };
const TELLING_DEGREES = 45;

/**
 * The inductance from an angle far below the resonance, which no level that was touched is in: with Z = R + jωL, R in proportion to L,
 * and Y = g + jωc, tan θ = ω(Lg + Rc)/(1 + Rg − ω²Lc).
 */
export function guessFromRatio({ frequenciesHz, degrees, load }: RatioSweep, known: KnownBeside): Guess {
  const rising = [...frequenciesHz.keys()].sort((a, b) => frequenciesHz[a]! - frequenciesHz[b]!);
  const steepest = rising.reduce((best, i) => (degrees[i]! > degrees[best]! ? i : best));
  const at = rising.find((i) => degrees[i]! > TELLING_DEGREES) ?? steepest;
  const omega = 2 * Math.PI * frequenciesHz[at]!;
  const slope = Math.tan(Math.min(degrees[at]!, 80) * RADIANS_PER_DEGREE);
  const { re: g, im } = admittance(load, omega);
  const k = USUAL.ohmsPerHenry;
  const henries = slope / (omega * g + k * im - slope * (k * g - omega * im));
  const inductance = henries > 0 ? Math.min(20, Math.max(0.3, henries)) : 4;
  const resistance = known.resistance?.ohms ?? k * inductance;
  return { resistance, inductance, capacitance: USUAL.farads, loss: USUAL.loss };
}
