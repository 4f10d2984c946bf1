import type { Coil } from "../build-file/schema.ts";
import { emfLaw, times } from "./emf-law.ts";
import { weightedSum } from "./level-and-phase.ts";
import type { CoilSource } from "./pickup-elements.ts";
import type { Transfers } from "./transfers.ts";

/** Coils behind the same metal, which may be summed before it is counted. */
interface Group {
  readonly shielding: Coil["shielding"];
  readonly members: readonly number[];
}

function groupsOf(sources: readonly CoilSource[]): Group[] {
  const groups = new Map<string, { shielding: Coil["shielding"]; members: number[] }>();
  for (const [index, { spec }] of sources.entries()) {
    const key = JSON.stringify(spec.shielding ?? null);
    const group = groups.get(key) ?? { shielding: spec.shielding, members: [] };
    group.members.push(index);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/** Transfers from the EMF that each coil would have without the metal about it; those of a guard without any are as they were. */
export function shieldedTransfers(inner: Transfers): Transfers {
  const { sources } = inner;
  if (sources.every(({ spec }) => spec.shielding === undefined)) return inner;
  const groups = groupsOf(sources);
  const emfs = sources.map(({ emf }) => emf);
  const perSource = (frequenciesHz: Float64Array) => {
    const spectra = inner.perSource(frequenciesHz);
    for (const { shielding, members } of groups) {
      const law = shielding && emfLaw(shielding)(frequenciesHz);
      if (law) for (const index of members) spectra[index] = times(spectra[index]!, law);
    }
    return spectra;
  };
  const total = (frequenciesHz: Float64Array, weights: readonly number[] = emfs) => {
    const parts = groups.map(({ shielding, members }) => {
      const own = weights.map((weight, index) => (members.includes(index) ? weight : 0));
      const sum = inner.total(frequenciesHz, own);
      return shielding ? times(sum, emfLaw(shielding)(frequenciesHz)) : sum;
    });
    return weightedSum(
      parts,
      parts.map(() => 1),
    );
  };
  const power =
    (weights: readonly number[] = emfs) =>
    (frequencyHz: number) => {
      const { re, im } = total(Float64Array.of(frequencyHz), weights);
      return re[0]! ** 2 + im[0]! ** 2;
    };
  return { sources, perSource, total, power };
}
