import { powerFromDecibels } from "../../decibels.ts";
import { camOf, frequencyOfCam } from "../erb.ts";
import { SLICES } from "../slices.ts";
import type { HeardDifference } from "./heard-difference.ts";
import { FLOOR_DB, type HeardSound } from "./heard-sound.ts";

/** What a sound is said to be beside another, in the trade's words. */
export const CHARACTERS = ["brighter", "duller", "thicker", "thinner"] as const;
export type Character = (typeof CHARACTERS)[number];

/** Specific loudness goes with this power of excitation (E. Zwicker and H. Fastl, Psychoacoustics, ch. 8; from memory). */
const LOUDNESS_EXPONENT = 0.23;

const CAMS = SLICES.bands.map(({ centre }) => camOf(centre));

/** Where half of what is heard of both sounds lies below and half above, on the ear's own scale, in Hz. */
function middleHz(sounds: readonly HeardSound[]): number {
  let [total, moment] = [0, 0];
  for (const { levelsDb } of sounds) {
    for (const [band, level] of levelsDb.entries()) {
      const loudness =
        powerFromDecibels(LOUDNESS_EXPONENT * level) - powerFromDecibels(LOUDNESS_EXPONENT * FLOOR_DB[band]!);
      total += loudness;
      moment += loudness * CAMS[band]!;
    }
  }
  return frequencyOfCam(moment / total);
}

/**
 * The second sound beside the first by where the largest difference lies: more above the middle of what is heard is brighter, less is
 * duller; more below it is thicker, less is thinner. @param sounds of which one at least is none at all
 */
export function characterOf(first: HeardSound, second: HeardSound, { largest }: HeardDifference): Character {
  if (largest.band.centre >= middleHz([first, second])) return largest.db > 0 ? "brighter" : "duller";
  return largest.db > 0 ? "thicker" : "thinner";
}
