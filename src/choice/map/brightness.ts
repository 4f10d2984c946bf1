import { SLICES } from "../slices.ts";

/** Where the octaves of the centroid are counted from; it cancels. */
const OCTAVES_FROM_HZ = 1000;

/**
 * How bright a sound is: its spectral centroid as ISO/IEC 15938-4 (Audio Spectrum Centroid) defines it, the mean of the octaves above
 * 1 kHz weighed by power, told in Hz (from memory). Listeners order timbres by it first of all (J. M. Grey and J. W. Gordon, J. Acoust.
 * Soc. Am. 63, 1493, 1978).
 * @param energies of every slice, 50 Hz to 16 kHz; not silence
 */
export function brightnessHz(energies: Float64Array): number {
  let [total, moment] = [0, 0];
  for (let k = 0; k < energies.length; k++) {
    total += energies[k]!;
    moment += energies[k]! * Math.log2(SLICES.frequenciesHz[k]! / OCTAVES_FROM_HZ);
  }
  return OCTAVES_FROM_HZ * 2 ** (moment / total);
}
