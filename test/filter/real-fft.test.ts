import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { createRealFft } from "../../src/filter/real-fft.ts";

function slowDft(samples: Float64Array): Float64Array {
  const size = samples.length;
  const spectrum = new Float64Array(size + 2);
  for (let k = 0; k <= size / 2; k++) {
    for (let n = 0; n < size; n++) {
      const angle = (2 * Math.PI * ((k * n) % size)) / size;
      spectrum[2 * k]! += samples[n]! * Math.cos(angle);
      spectrum[2 * k + 1]! -= samples[n]! * Math.sin(angle);
    }
  }
  return spectrum;
}

const signals = fc
  .integer({ min: 2, max: 8 })
  .chain((log) => fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 2 ** log, maxLength: 2 ** log }));

describe("createRealFft", () => {
  it("agrees with the plain sum for every size", () => {
    fc.assert(
      fc.property(signals, (values) => {
        const samples = Float64Array.from(values);
        const spectrum = new Float64Array(samples.length + 2);
        createRealFft(samples.length).forward(spectrum, samples);
        const wanted = slowDft(samples);
        for (let k = 0; k < wanted.length; k++) expect(spectrum[k]).toBeCloseTo(wanted[k]!, 10);
      }),
      { numRuns: 40 },
    );
  });

  it("gives the samples back from their spectrum", () => {
    fc.assert(
      fc.property(signals, (values) => {
        const samples = Float64Array.from(values);
        const fft = createRealFft(samples.length);
        const spectrum = new Float64Array(samples.length + 2);
        const back = new Float64Array(samples.length);
        fft.forward(spectrum, samples);
        fft.inverse(back, spectrum);
        for (let n = 0; n < back.length; n++) expect(back[n]).toBeCloseTo(samples[n]!, 12);
      }),
      { numRuns: 40 },
    );
  });
});
