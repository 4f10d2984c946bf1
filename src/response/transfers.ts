import { SILENCE_DB } from "../decibels.ts";
import { assemblePencil, type Spectrum, solveTransfers } from "../network/nodal-analysis.ts";
import { type RationalTransfers, weightedRational } from "../network/parametric.ts";
import { evaluate, powerOf } from "../network/rational.ts";
import type { Circuit } from "./circuit.ts";
import { emfLaw, times } from "./emf-law.ts";
import { type LevelAndPhase, levelAndPhaseOf, weightedSum } from "./level-and-phase.ts";
import type { CoilSource } from "./pickup-elements.ts";
import { shieldedTransfers } from "./shielded-transfers.ts";

/** The transfer functions of a build in one setting, from each coil's unit EMF, as it were without metal about it, to the jack. */
export interface Transfers {
  readonly sources: readonly CoilSource[];
  /** One spectrum per source, V/V. */
  perSource(frequenciesHz: Float64Array): Spectrum[];
  /** All coils driven together with these weights, by default each with its own size and sign. */
  total(frequenciesHz: Float64Array, weights?: readonly number[]): Spectrum;
  /** Level and phase of the total, where there is a quicker way than by the weighted sum of `perSource`. */
  levelAndPhase?(frequenciesHz: Float64Array): LevelAndPhase;
  /** |H|² of the same at one frequency in Hz. */
  power(weights?: readonly number[]): (frequencyHz: number) => number;
}

function silence(length: number): Spectrum {
  return { re: new Float64Array(length), im: new Float64Array(length) };
}

function silentCurve(length: number): LevelAndPhase {
  return { magnitude: new Float64Array(length).fill(SILENCE_DB), phase: new Float64Array(length) };
}

/** From the EMF that each coil would have without the metal about it. */
function behindMetal(spectra: Spectrum[], sources: readonly CoilSource[], frequenciesHz: Float64Array): Spectrum[] {
  return spectra.map((spectrum, index) => {
    const { shielding } = sources[index]!.spec;
    return shielding ? times(spectrum, emfLaw(shielding)(frequenciesHz)) : spectrum;
  });
}

/** Transfers solved frequency by frequency: the reference that the fast way is held to. */
export function solvedTransfers(circuit: Circuit, sources: readonly CoilSource[]): Transfers {
  const pencil = assemblePencil(circuit.network);
  const emfs = sources.map((source) => source.emf);
  const perSource = (frequenciesHz: Float64Array) =>
    behindMetal(solveTransfers(pencil, circuit.outputNode, frequenciesHz), sources, frequenciesHz);
  return {
    sources,
    perSource,
    total: (frequenciesHz, weights = emfs) => weightedSum(perSource(frequenciesHz), weights),
    power:
      (weights = emfs) =>
      (frequencyHz) => {
        const { re, im } = weightedSum(perSource(Float64Array.of(frequencyHz)), weights);
        return re[0]! ** 2 + im[0]! ** 2;
      },
  };
}

/** Transfers evaluated from polynomials. */
export function rationalTransfers(bare: RationalTransfers, sources: readonly CoilSource[]): Transfers {
  const rational = shieldedTransfers(bare, sources);
  const emfs = sources.map((source) => source.emf);
  const { denominator, omega0 } = rational;
  return {
    sources,
    perSource: (frequenciesHz) =>
      rational.numerators.map((numerator) =>
        numerator ? evaluate({ numerator, denominator, omega0 }, frequenciesHz) : silence(frequenciesHz.length),
      ),
    total: (frequenciesHz, weights = emfs) => {
      const total = weightedRational(rational, weights);
      return total ? evaluate(total, frequenciesHz) : silence(frequenciesHz.length);
    },
    levelAndPhase: (frequenciesHz) => {
      const total = weightedRational(rational, emfs);
      return total ? levelAndPhaseOf(total, frequenciesHz) : silentCurve(frequenciesHz.length);
    },
    power: (weights = emfs) => {
      const total = weightedRational(rational, weights);
      return total ? powerOf(total) : () => 0;
    },
  };
}
