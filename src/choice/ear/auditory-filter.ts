import { erbHz } from "../erb.ts";
import { SLICES } from "../slices.ts";

/** What stands in one ERB of a guitar played loud, in dB SPL: the lower skirt of the ear's filters is as shallow as it is at this level. */
const LEVEL_IN_AN_ERB_DB = 65;
/** Where Glasberg and Moore's lower and upper skirts are alike, and by how much of p a decibel above it makes the lower one shallower. */
const EVEN_SKIRTS_DB = 51;
const SHALLOWER_PER_DB = 0.35;

/** Sharpness of the filter's skirts, p = 4·f/ERB_N. */
const sharpness = (centreHz: number) => (4 * centreHz) / erbHz(centreHz);

/**
 * Power gain of the auditory filter at one frequency for sound at another, the rounded exponential (1 + p·g)·e^(−p·g) with g the
 * distance over the centre (B. R. Glasberg and B. C. J. Moore, Derivation of auditory filter shapes from notched-noise data, Hear. Res.
 * 47, 103, 1990): sound below a filter's centre reaches it by the shallower skirt, so that low sound masks high sound.
 */
export function filterGain(centreHz: number, frequencyHz: number): number {
  const p = sharpness(centreHz);
  const g = Math.abs(frequencyHz - centreHz) / centreHz;
  const above = LEVEL_IN_AN_ERB_DB - EVEN_SKIRTS_DB;
  const skirt = frequencyHz < centreHz ? p - SHALLOWER_PER_DB * (p / sharpness(1000)) * above : p;
  return (1 + skirt * g) * Math.exp(-skirt * g);
}

/** Less than this of a slice's energy moves no filter over threshold and room. */
const LEAST_GAIN = 1e-10;

interface Row {
  /** The first slice that counts. */
  readonly from: number;
  readonly gains: Float64Array;
}

/** Row by row of the bands, what each slice's energy brings to the filter in the band's middle. */
const ROWS = SLICES.bands.map(({ centre }): Row => {
  const gains = SLICES.frequenciesHz.map((hertz) => filterGain(centre, hertz));
  const counts = (gain: number) => gain > LEAST_GAIN;
  const from = gains.findIndex(counts);
  return { from, gains: gains.slice(from, gains.findLastIndex(counts) + 1) };
});

/** The excitation pattern: energy behind the auditory filter in the middle of every ERB band. @param energies of every slice */
export function excitation(energies: Float64Array): Float64Array {
  const pattern = new Float64Array(ROWS.length);
  for (let band = 0; band < ROWS.length; band++) {
    const { from, gains } = ROWS[band]!;
    let sum = 0;
    for (let k = 0; k < gains.length; k++) sum += gains[k]! * energies[from + k]!;
    pattern[band] = sum;
  }
  return pattern;
}
