import { emfLaw, times } from "./emf-law.ts";
import { weightedSum } from "./level-and-phase.ts";
import type { Transfers } from "./transfers.ts";

/**
 * Transfers from the EMF that each coil would have without the metal about it, where the network is solved frequency by frequency;
 * polynomials have it from `shieldedRational`. Those of a guard without any are as they were.
 */
export function shieldedTransfers(inner: Transfers): Transfers {
  const { sources } = inner;
  if (sources.every(({ spec }) => spec.shielding === undefined)) return inner;
  const emfs = sources.map(({ emf }) => emf);
  const perSource = (frequenciesHz: Float64Array) =>
    inner.perSource(frequenciesHz).map((spectrum, index) => {
      const { shielding } = sources[index]!.spec;
      return shielding ? times(spectrum, emfLaw(shielding)(frequenciesHz)) : spectrum;
    });
  const total = (frequenciesHz: Float64Array, weights: readonly number[] = emfs) =>
    weightedSum(perSource(frequenciesHz), weights);
  const power =
    (weights: readonly number[] = emfs) =>
    (frequencyHz: number) => {
      const { re, im } = total(Float64Array.of(frequencyHz), weights);
      return re[0]! ** 2 + im[0]! ** 2;
    };
  return { sources, perSource, total, power };
}
