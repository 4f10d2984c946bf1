import { describe, expect, it } from "vitest";
import { brightnessHz } from "../../../src/choice/map/brightness.ts";
import { SLICES } from "../../../src/choice/slices.ts";

const { frequenciesHz } = SLICES;

function tones(...energies: readonly (readonly [slice: number, energy: number])[]): Float64Array {
  const all = new Float64Array(frequenciesHz.length);
  for (const [slice, energy] of energies) all[slice] = energy;
  return all;
}

describe("brightness", () => {
  it("of one tone is its frequency", () => {
    expect(brightnessHz(tones([40, 0.3]))).toBeCloseTo(frequenciesHz[40]!, 9);
  });

  it("of two tones alike is their geometric mean, and goes with the stronger", () => {
    expect(brightnessHz(tones([10, 1], [90, 1]))).toBeCloseTo(Math.sqrt(frequenciesHz[10]! * frequenciesHz[90]!), 9);
    const weighed = (frequenciesHz[10]! ** 3 * frequenciesHz[90]!) ** (1 / 4);
    expect(brightnessHz(tones([10, 3], [90, 1]))).toBeCloseTo(weighed, 9);
  });

  it("does not go with level", () => {
    expect(brightnessHz(tones([10, 1e-6], [90, 1e-6]))).toBeCloseTo(brightnessHz(tones([10, 5], [90, 5])), 9);
  });
});
