import fc from "fast-check";
import { SLICES } from "../../../src/choice/slices.ts";

/** Energies of the slices of any sound that is none at all, over more than the range that is heard. */
export const anyEnergies = fc
  .array(fc.double({ min: -90, max: 0, noNaN: true }), {
    minLength: SLICES.frequenciesHz.length,
    maxLength: SLICES.frequenciesHz.length,
  })
  .map((levels) => Float64Array.from(levels, (level) => 10 ** (level / 10)));

/** A sound with its bands made a little louder or softer. */
export const nearby = (energies: Float64Array, bySliceDb: readonly number[]) =>
  energies.map((energy, k) => energy * 10 ** ((bySliceDb[k % bySliceDb.length] ?? 0) / 10));
