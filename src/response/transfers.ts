import { type Spectrum, TransferSolver, type ValueAndSlope } from "../network/nodal-analysis.ts";
import { assemblePencil } from "../network/pencil.ts";
import type { Circuit } from "./circuit.ts";
import { emfLaw, slopeBehind, times } from "./emf-law.ts";
import { exactCurve, type PowerCurve } from "./features/power-curve.ts";
import { type LevelAndPhase, weightedSum } from "./level-and-phase.ts";
import type { CoilSource } from "./pickup-elements.ts";

/** The transfer functions of a build in one setting, from each coil's unit EMF, as it were without metal about it, to the jack. */
export interface Transfers {
  readonly sources: readonly CoilSource[];
  /** One spectrum per source, V/V. */
  perSource(frequenciesHz: Float64Array): Spectrum[];
  /** By how much the values of `perSource` may be off, where they are not the plain solution's. */
  offPerSource?(frequenciesHz: Float64Array): Float64Array[];
  /** All coils driven together with these weights, by default each with its own size and sign. */
  total(frequenciesHz: Float64Array, weights?: readonly number[]): Spectrum;
  /** Level and phase of the total over rising frequencies, where there is a quicker way than by the weighted sum of `perSource`. */
  levelAndPhase?(frequenciesHz: Float64Array): LevelAndPhase;
  /** |H|² of the same. */
  power(weights?: readonly number[]): PowerCurve;
  /** The same from the plain solution; absent where they are from it. */
  exact?(): Transfers;
}

/** From the EMF that each coil would have without the metal about it. */
function behindMetal(spectra: Spectrum[], sources: readonly CoilSource[], frequenciesHz: Float64Array): Spectrum[] {
  return spectra.map((spectrum, index) => {
    const { shielding } = sources[index]!.spec;
    return shielding ? times(spectrum, emfLaw(shielding)(frequenciesHz)) : spectrum;
  });
}

export function powerOfSpectrum({ re, im }: Spectrum, i: number): number {
  return re[i]! * re[i]! + im[i]! * im[i]!;
}

/** Transfers solved frequency by frequency: the reference that the fast way is held to. */
export function solvedTransfers(circuit: Circuit, sources: readonly CoilSource[]): Transfers {
  const solver = new TransferSolver(assemblePencil(circuit.network), circuit.outputNode);
  const emfs = sources.map((source) => source.emf);
  const perSource = (frequenciesHz: Float64Array) => behindMetal(solver.solve(frequenciesHz), sources, frequenciesHz);
  return {
    sources,
    perSource,
    total: (frequenciesHz, weights = emfs) => weightedSum(perSource(frequenciesHz), weights),
    power: (weights = emfs) => ({
      ...exactCurve((frequencyHz) => powerOfSpectrum(weightedSum(perSource(Float64Array.of(frequencyHz)), weights), 0)),
      slope: (frequencyHz) => {
        const each = solver.solveWithSlopes(frequencyHz);
        return each && slopeOfSum(behindMetalWithSlopes(each, sources, frequencyHz), weights);
      },
    }),
  };
}

function behindMetalWithSlopes(each: ValueAndSlope[], sources: readonly CoilSource[], frequencyHz: number) {
  return each.map((value, index) => {
    const { shielding } = sources[index]!.spec;
    return shielding ? slopeBehind(value, shielding, frequencyHz) : value;
  });
}

/** d ln|Σ w·H|² / d ln f. */
function slopeOfSum(each: readonly ValueAndSlope[], weights: readonly number[]): number {
  let [re, im, slopeRe, slopeIm] = [0, 0, 0, 0];
  for (const [index, value] of each.entries()) {
    const weight = weights[index]!;
    re += weight * value.re;
    im += weight * value.im;
    slopeRe += weight * value.slopeRe;
    slopeIm += weight * value.slopeIm;
  }
  return (2 * (re * slopeRe + im * slopeIm)) / (re * re + im * im);
}
