import { type PowerCurve, powersOf } from "./features/power-curve.ts";
import { weightedSum } from "./level-and-phase.ts";
import { powerOfSpectrum, type Transfers } from "./transfers.ts";

/** A real factor over frequency. */
export type Weight = (frequencyHz: number) => number;

/** Transfers with each source's multiplied by a weight of its own. */
export function heardThrough(transfers: Transfers, weights: readonly Weight[]): Transfers {
  const { exact } = transfers;
  const emfs = transfers.sources.map((source) => source.emf);
  const perSource = (frequenciesHz: Float64Array) =>
    transfers.perSource(frequenciesHz).map(({ re, im }, index) => {
      const weight = frequenciesHz.map(weights[index]!);
      return { re: re.map((value, i) => value * weight[i]!), im: im.map((value, i) => value * weight[i]!) };
    });
  const offPerSource = (frequenciesHz: Float64Array) =>
    (transfers.offPerSource?.(frequenciesHz) ?? []).map((off, index) =>
      off.map((each, i) => each && Math.abs(weights[index]!(frequenciesHz[i]!)) * each),
    );
  /** By how much the total may be off. */
  const offs = (frequenciesHz: Float64Array, emf: readonly number[]) => {
    const sum = new Float64Array(frequenciesHz.length);
    for (const [index, off] of offPerSource(frequenciesHz).entries())
      for (let i = 0; i < sum.length; i++) sum[i]! += Math.abs(emf[index]!) * off[i]!;
    return sum;
  };
  const total = (frequenciesHz: Float64Array, emf: readonly number[] = emfs) =>
    weightedSum(perSource(frequenciesHz), emf);
  const power = (emf: readonly number[] = emfs): PowerCurve => {
    const sample = (frequenciesHz: Float64Array) => powersOf(total(frequenciesHz, emf), offs(frequenciesHz, emf));
    return {
      sample,
      at: (frequencyHz) => powerOfSpectrum(total(Float64Array.of(frequencyHz), emf), 0),
      offAt: (frequencyHz) => sample(Float64Array.of(frequencyHz)).off[0]!,
      ...(exact && { exact: () => heardThrough(exact(), weights).power(emf) }),
    };
  };
  return {
    sources: transfers.sources,
    perSource,
    total,
    power,
    ...(exact && { offPerSource, exact: () => heardThrough(exact(), weights) }),
  };
}
