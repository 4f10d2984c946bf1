import type { CoilValues } from "../../response/coil-ladder.ts";
import { coilLadder } from "../../response/coil-ladder.ts";
import { type Across, coilImpedance, coilTransfer } from "./coil-model.ts";

/** Where a peak was seen: in the impedance, or in the voltage at the leads when something else drives the coil. */
export type PeakOf = "impedance" | "response";

const GRID = 24;
/** Half of what a peak's slope is taken over, and how closely it is found, of its frequency. */
const SLOPE = 1e-4;
const CLOSE = 1e-10;
const MOST_STEPS = 40;

/** Where a function that falls through nothing does so, by false position; the end that stays counts half each time, lest it stay for good. */
function zeroOf(of: (x: number) => number, from: number, to: number): number {
  let [low, high, above, below] = [from, to, of(from), of(to)];
  for (let step = 0; step < MOST_STEPS && high - low > CLOSE && above > 0 && below < 0; step++) {
    const x = low + ((high - low) * above) / (above - below);
    const y = of(x);
    if (y > 0) [low, above, below] = [x, y, below / 2];
    else [high, below, above] = [x, y, above / 2];
    if (Math.abs(y) < Number.EPSILON) return x;
  }
  return (low * -below + high * above) / (above - below);
}

/**
 * The frequency of the maximum of |Z| or |V| of a coil with any loss, with `across` beside it. The inductance that resonates lies
 * between what no section bridges and all of it.
 */
export function peakHz(coil: CoilValues, across: Across, peakOf: PeakOf): number {
  const { inductance, sections } = coilLadder(coil);
  const all = sections.reduce((sum, section) => sum + section.inductance, inductance);
  const least = sections.length > 0 && inductance > 0 ? inductance : all;
  const farads = coil.capacitance + across.capacitance;
  const at = (henries: number) => Math.log(1 / (2 * Math.PI * Math.sqrt(henries * farads)));
  const measured = peakOf === "impedance" ? coilImpedance : coilTransfer;
  const level = (log: number) => {
    const { re, im } = measured(coil, Math.exp(log), across);
    return Math.log(re * re + im * im);
  };
  const [from, to] = [at(all) - 1, at(least) + 0.4];
  const step = (to - from) / GRID;
  const levels = Array.from({ length: GRID + 1 }, (_, k) => level(from + k * step));
  const top = from + levels.indexOf(Math.max(...levels)) * step;
  return Math.exp(zeroOf((log) => level(log + SLOPE) - level(log - SLOPE), top - step, top + step));
}
