import { describe, expect, it } from "vitest";
import { bandEnergies } from "../../../src/choice/band-energies.ts";
import { camOf } from "../../../src/choice/erb.ts";
import { brightnessHz } from "../../../src/choice/map/brightness.ts";
import { SLICES, SLICES_PER_BAND } from "../../../src/choice/slices.ts";

/** Bands of so much energy each after the K-weighting; all others without. */
function bands(...energies: readonly (readonly [band: number, energy: number])[]) {
  const slices = new Float64Array(SLICES.frequenciesHz.length);
  for (const [band, energy] of energies)
    slices[band * SLICES_PER_BAND] = energy / SLICES.kGain[band * SLICES_PER_BAND]!;
  return bandEnergies(slices);
}

const hertz = (band: number) => SLICES.bands[band]!.centre;

describe("brightness", () => {
  it("of a single band is its frequency", () => {
    expect(brightnessHz(bands([14, 0.3]))).toBeCloseTo(hertz(14), 6);
  });

  it("of two bands as loud lies halfway on the ear's scale, in ERB numbers", () => {
    const cams = (camOf(hertz(4)) + camOf(hertz(30))) / 2;
    // ERB number 21.366·log10(0.004368·f + 1), solved for f by hand.
    const between = (10 ** (cams / 21.366) - 1) / 0.004368;
    expect(brightnessHz(bands([4, 1], [30, 1])) / between).toBeCloseTo(1, 3);
  });

  it("goes with loudness and not with energy: 30 dB more pull less than five times as hard", () => {
    const cams = camOf(brightnessHz(bands([4, 1000], [30, 1])));
    const share = (cams - camOf(hertz(4))) / (camOf(hertz(30)) - camOf(hertz(4)));
    expect(share).toBeCloseTo(1 / (1 + 1000 ** 0.23), 9);
  });

  it("does not go with level, nor with what is not heard", () => {
    expect(brightnessHz(bands([4, 1e-6], [30, 1e-6]))).toBeCloseTo(brightnessHz(bands([4, 5], [30, 5])), 6);
    expect(brightnessHz(bands([4, 1], [30, 1e-7]))).toBeCloseTo(hertz(4), 6);
  });
});
