import { showQuantity } from "../../build-file/show-quantity.ts";
import type { BandDifference } from "./difference.ts";
import type { PeakShift } from "./resonance-jnd.ts";

/**
 * The just-noticeable change of a tone's level: 1.25 dB near threshold, 0.5 dB at 80 dB above it (Jesteadt, Wier and Green, J.
 * Acoust. Soc. Am. 61, 169, 1977; from memory). Listeners who discriminate resonances follow the largest level difference in any
 * one band (Gagné and Zurek 1988), so the largest band difference is held against it.
 */
const LEVEL_JND_DB = { best: 0.5, usual: 1.25 };
/** Steps above the just noticeable; choices of this project, no source. */
const PLAIN_DB = 3;
const ANOTHER_SOUND_DB = 6;

export const AUDIBILITIES = ["none", "edge", "side-by-side", "plain", "another-sound"] as const;
export type Audibility = (typeof AUDIBILITIES)[number];

export const AUDIBILITY_WORDS: Readonly<Record<Audibility, string>> = {
  none: "nobody hears this",
  edge: "at the edge of hearing, side by side and equally loud",
  "side-by-side": "heard side by side",
  plain: "plainly heard",
  "another-sound": "another sound",
};

export const VERDICT_BASIS =
  "Loudness is matched first (K-weighting of ITU-R BS.1770), then the largest difference in any ERB band (ANSI/ASA S3.4-2007) that" +
  " the sound reaches is held against the just-noticeable change of level, 0.5 dB at best and 1.25 dB usually (Jesteadt, Wier and" +
  " Green 1977, from memory); 3 dB and 6 dB are this service's own marks for plain and for another sound. A peak's shift is given" +
  " in just-noticeable steps of 0.079·Fr/√Q (Gagné and Zurek 1988, measured at 300–2000 Hz and Q 1–36, extrapolated beyond).";

/** What the largest difference in any band stays under where two sounds pass for one: by nobody told apart, or hardly. */
export const PASSES_FOR_ONE_DB = { none: LEVEL_JND_DB.best, edge: LEVEL_JND_DB.usual } as const;
export type PassesForOne = keyof typeof PASSES_FOR_ONE_DB;

/** How audible a level-matched difference of this many dB in one band is. */
export function audibility(largestDb: number): Audibility {
  const size = Math.abs(largestDb);
  if (size < LEVEL_JND_DB.best) return "none";
  if (size < LEVEL_JND_DB.usual) return "edge";
  if (size < PLAIN_DB) return "side-by-side";
  return size < ANOTHER_SOUND_DB ? "plain" : "another-sound";
}

/** 0.02, 3.4, 12 dB: two figures that count. */
export function inDecibels(db: number): string {
  const size = Math.abs(db);
  const digits = size < 0.1 ? 2 : size < 9.95 ? 1 : 0;
  return `${size.toFixed(digits)} dB`;
}

export function inHertz(hz: number): string {
  return showQuantity(Math.abs(hz), "frequency", 3);
}

function peakWords(shift: PeakShift | null): string {
  if (!shift || Math.abs(shift.shiftHz) < 1) return "";
  const steps =
    shift.inJnd < 1 ? "less than one just-noticeable step" : `${shift.inJnd.toFixed(1)} just-noticeable steps`;
  const way = shift.shiftHz > 0 ? "higher" : "lower";
  return `; the second's peak is ${inHertz(shift.shiftHz)} ${way}, ${steps}${shift.extrapolated ? " (extrapolated)" : ""}`;
}

function loudnessWords(loudnessLu: number): string {
  if (Math.abs(loudnessLu) < LEVEL_JND_DB.best) return "";
  return `; left as they are, the second is ${Math.abs(loudnessLu).toFixed(1)} LU ${loudnessLu > 0 ? "louder" : "quieter"}`;
}

/** One sentence, without its full stop, on one setting. */
export function verdictOn(difference: BandDifference, shift: PeakShift | null): string {
  const [firstSilent, secondSilent] = difference.silent;
  if (firstSilent && secondSilent) return "both are silent";
  if (firstSilent || secondSilent) return `the ${firstSilent ? "first" : "second"} is silent`;
  const { db, band } = difference.largest;
  const size = Math.abs(db) < 0.005 ? "less than 0.01 dB" : `${inDecibels(db)} at ${inHertz(band.centre)}`;
  const heard = AUDIBILITY_WORDS[audibility(db)];
  return `they differ by ${size}: ${heard}${loudnessWords(difference.loudnessLu)}${peakWords(shift)}`;
}
