import { type Audibility, audibility } from "../../choice/compare/verdict.ts";
import { distanceDb } from "../../choice/map/distance.ts";
import { largestApart } from "../../choice/map/equal-sounds.ts";
import { capitalised } from "../../english.ts";
import type { GuardSound } from "./sounds.ts";

/** A sound of one guard beside the nearest of the other. */
export interface NearestSound {
  readonly of: GuardSound;
  /** Null where the sound itself, or all of the other guard, is silent. */
  readonly nearest: GuardSound | null;
  /** Root mean square over the ear's bands of what they differ by once equally loud, in dB. */
  readonly distanceDb: number | null;
  /** What the largest difference in any band that is heard comes to. */
  readonly audible: Audibility | null;
  /** LU, the nearest minus the sound. */
  readonly loudnessLu: number | null;
}

const NOTHING = { nearest: null, distanceDb: null, audible: null, loudnessLu: null };

/** The nearest of the others by the distance that the map of sounds is drawn by; of equals a position without a push-pull, then the first. */
export function nearestOf(sound: GuardSound, others: readonly GuardSound[]): NearestSound {
  if (!sound.sound) return { of: sound, ...NOTHING };
  const { point } = sound.sound;
  const far = others
    .flatMap((other) => (other.sound ? [{ other, distance: distanceDb(point, other.sound.point) }] : []))
    .sort((a, b) => a.distance - b.distance);
  const found = far[0];
  if (!found) return { of: sound, ...NOTHING };
  const other = found.other.sound!;
  return {
    of: sound,
    nearest: found.other,
    distanceDb: found.distance,
    audible: audibility(largestApart(sound.sound, other)),
    loudnessLu: other.loudnessLu - sound.sound.loudnessLu,
  };
}

export const LIKENESS: Readonly<Record<Audibility, string>> = {
  none: "the same sound to the ear",
  edge: "the same sound, or hardly another",
  "side-by-side": "nearly it: told apart side by side",
  plain: "like it, but plainly another",
  "another-sound": "nothing like it",
};

export function placeWords({ position }: GuardSound): string {
  return position === "" ? "the only position" : `position ${position}`;
}

/** Less is hardly heard from one day to the next; a choice. */
const NOTICED_LU = 1;

export function levelWords(loudnessLu: number): string {
  const size = Math.abs(loudnessLu);
  return size < NOTICED_LU ? "as loud as before" : `${size.toFixed(1)} dB ${loudnessLu > 0 ? "louder" : "softer"}`;
}

/** Octaves of the brightness: less is hardly told from one day to the next; a choice. */
const NOTICED_OCTAVES = 0.05;

function brightnessWords(from: GuardSound, to: GuardSound): string {
  const octaves = Math.log2(to.sound!.brightnessHz / from.sound!.brightnessHz);
  if (Math.abs(octaves) < NOTICED_OCTAVES) return "";
  return octaves > 0 ? ", brighter" : ", darker";
}

/** "Position 4 (neck + middle, …) → position 2: nearly it: told apart side by side; 2.1 dB softer." */
export function nearestWords({ of, nearest, audible, loudnessLu }: NearestSound, guard: string): string {
  const start = `${capitalised(placeWords(of))} (${of.label})`;
  if (!of.sound) return `${start} was silent.`;
  if (!nearest || audible === null) return `${start}: nothing of ${guard} sounds.`;
  if (audible === "another-sound")
    return `${start}: gone. The nearest is ${placeWords(nearest)} (${nearest.label}), and it is another sound.`;
  return `${start}: now ${placeWords(nearest)} (${nearest.label}), ${LIKENESS[audible]}; ${levelWords(loudnessLu!)}${brightnessWords(of, nearest)}.`;
}
