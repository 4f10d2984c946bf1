import type { Biquad } from "./k-weighting.ts";

/** Far under any rounding: the filters' memory of a sound that has ended. */
const NEGLIGIBLE = 1e-30;

/** The high-pass has its zeros at 0 Hz: b1 = −2·b0, b2 = b0. */
export type Sections = readonly [shelf: Biquad, highPass: Biquad];

/** Energy of the K-weighted samples between each edge and the next, edges rising from 0 and within the sound. */
export function weightedEnergies(
  samples: Float32Array,
  edges: readonly number[],
  [shelf, highPass]: Sections,
): Float64Array {
  const energies = new Float64Array(edges.length - 1);
  // The shelf takes on the high-pass's gain, so that only the feedback of the high-pass multiplies.
  const gain = highPass.b0;
  const b0 = shelf.b0 * gain;
  const b1 = shelf.b1 * gain;
  const b2 = shelf.b2 * gain;
  const { a1, a2 } = shelf;
  const { a1: c1, a2: c2 } = highPass;
  // Transposed direct form II: two numbers of memory a section.
  let s1 = 0;
  let s2 = 0;
  let h1 = 0;
  let h2 = 0;
  for (let step = 0; step < energies.length; step++) {
    let energy = 0;
    const end = edges[step + 1]!;
    for (let n = edges[step]!; n < end; n++) {
      const x = samples[n]!;
      const shelved = b0 * x + s1;
      s1 = b1 * x + s2 - a1 * shelved;
      s2 = b2 * x - a2 * shelved;
      const y = shelved + h1;
      h1 = h2 - (shelved + shelved) - c1 * y;
      h2 = shelved - c2 * y;
      energy += y * y;
    }
    energies[step] = energy;
    // Denormal numbers after the end of a note would slow the loop a hundredfold.
    if (Math.abs(s1) + Math.abs(s2) + Math.abs(h1) + Math.abs(h2) < NEGLIGIBLE) s1 = s2 = h1 = h2 = 0;
  }
  return energies;
}
