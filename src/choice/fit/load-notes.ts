import { PresolderError } from "../../errors.ts";
import { DECISIVE_AICC } from "./choose-model.ts";
import type { Across } from "./coil-model.ts";
import type { Fit } from "./fit-problem.ts";
import type { RatioSweep } from "./loaded-ratio.ts";

/** The same fit over sweeps whose loads are told otherwise, its loss model kept. */
export type Refit = (sweeps: readonly RatioSweep[]) => Fit;

/** So much of its value a load's part is moved to see what follows. */
const STEP = 0.02;

const withResistance = (load: Across, factor: number): Across => ({ ...load, resistance: load.resistance * factor });
const withCapacitance = (load: Across, factor: number): Across => ({ ...load, capacitance: load.capacitance * factor });

function tried(refit: Refit, sweeps: readonly RatioSweep[]): Fit | undefined {
  try {
    return refit(sweeps);
  } catch (error) {
    if (error instanceof PresolderError) return undefined;
    throw error;
  }
}

/** d ln L / d ln of a part of the load. */
function sensitivity(fit: Fit, moved: Fit): number {
  return Math.log(moved.lowFrequencyInductance.value / fit.lowFrequencyInductance.value) / Math.log(1 + STEP);
}

/** One load alone says nothing of itself: what an error in it is worth. */
function asTold(fit: Fit, sweep: RatioSweep, refit: Refit): string[] {
  const { load } = sweep;
  const parts = [
    ["resistance", Number.isFinite(load.resistance), withResistance],
    ["capacitance", load.capacitance > 0, withCapacitance],
  ] as const;
  const told = parts.flatMap(([name, isThere, move]) => {
    const moved = isThere ? tried(refit, [{ ...sweep, load: move(load, 1 + STEP) }]) : undefined;
    return moved ? [`1 % of error in its ${name} is ${Math.abs(sensitivity(fit, moved)).toFixed(1)} %`] : [];
  });
  if (told.length === 0) return [];
  return [
    `The load is taken as told, which the errors do not hold: ${told.join(", and ")} of the inductance. Say its tolerance, and they do. A second known load would show an error in the first.`,
  ];
}

/** The second load's admittance is tried so much larger and smaller, in natural logarithms. */
const REACH = 0.08;
/** Parts of 2 % each may differ by so much; those of three real coils (strayr/pickupAnalyseR-data) came within 2.3 % of each other. */
const LEAST_APART = 0.04;

const scaled = ({ resistance, capacitance }: Across, factor: number): Across => ({
  resistance: resistance / factor,
  capacitance: capacitance * factor,
});

/** By what factor of the second load, as its logarithm, two loads best fit one coil, and how much better than as told, in AICc. */
export function apart(fit: Fit, [first, second]: readonly [RatioSweep, RatioSweep], refit: Refit) {
  // What is refused comes nowhere near.
  const worth = (made: Fit | undefined) =>
    made?.considered.find(({ loss }) => loss === fit.loss)?.aicc ?? Number.POSITIVE_INFINITY;
  const at = (log: number) => worth(tried(refit, [first, { ...second, load: scaled(second.load, Math.exp(log)) }]));
  const told = worth(fit);
  const [under, over] = [at(-REACH), at(REACH)];
  const curve = under - 2 * told + over;
  const nearer = under < over ? -REACH : REACH;
  const lowest = (REACH * (under - over)) / (2 * curve);
  const log = curve > 0 && Number.isFinite(curve) ? Math.max(-2 * REACH, Math.min(2 * REACH, lowest)) : nearer;
  return { log, gained: told - at(log) };
}

function disagreement(fit: Fit, sweeps: readonly [RatioSweep, RatioSweep], refit: Refit): string[] {
  const found = apart(fit, sweeps, refit);
  if (!(found.gained > DECISIVE_AICC) || Math.abs(found.log) < LEAST_APART) return [];
  const percent = Math.round(100 * Math.expm1(Math.abs(found.log)));
  const [way, other] = found.log > 0 ? ["more", "less"] : ["less", "more"];
  return [
    `The two loads do not tell the same coil: the second seems to draw some ${percent} % ${way} current than as told, or the first as much ${other}. Read the capacitance and the resistance of both on a meter.`,
  ];
}

function withinTolerance(sweeps: readonly RatioSweep[]): string[] {
  const told = [...new Set(sweeps.flatMap(({ tolerance }) => tolerance || []))];
  if (told.length === 0) return [];
  const percents = told.map((each) => `${Number((100 * each).toPrecision(2))} %`).join(" and ");
  return [
    `The errors hold what loads within ${percents} of what was told leave open, resistance and capacitance each.`,
  ];
}

/** What to bear in mind of loads that were told: one is taken as it is, two are held to each other. */
export function loadNotes(fit: Fit, sweeps: readonly RatioSweep[], refit: Refit): string[] {
  const [first, second] = sweeps;
  if (!first) return [];
  const within = withinTolerance(sweeps);
  if (second) return [...within, ...disagreement(fit, [first, second], refit)];
  return first.tolerance === undefined ? asTold(fit, first, refit) : within;
}
