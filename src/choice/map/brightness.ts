import { type BandEnergies, leastHeard } from "../band-energies.ts";
import { camOf, frequencyOfCam } from "../erb.ts";
import { SLICES } from "../slices.ts";

/** Specific loudness goes with this power of a band's energy (E. Zwicker and H. Fastl, Psychoacoustics, ch. 8; from memory). */
const LOUDNESS_EXPONENT = 0.23;

/**
 * How bright a sound is: where the centre of its loudness lies on the ear's own scale of frequency, told as the frequency there. The first
 * moment of specific loudness over that scale is what listeners call sharpness (G. von Bismarck, Acustica 30, 159, 1974; from memory), here
 * over ERB bands, K-weighted, and without his factor for the top octaves, which no guitar loudspeaker gives. The same at any level.
 * @param bands of a sound that is none at all
 */
export function brightnessHz(bands: BandEnergies): number {
  const least = leastHeard(bands);
  let [total, moment] = [0, 0];
  for (const [band, energy] of bands.weighted.entries()) {
    if (energy < least) continue;
    const loudness = energy ** LOUDNESS_EXPONENT;
    total += loudness;
    moment += loudness * camOf(SLICES.bands[band]!.centre);
  }
  return frequencyOfCam(moment / total);
}
