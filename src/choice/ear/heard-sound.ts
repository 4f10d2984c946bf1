import { powerDecibels, powerFromDecibels, SILENT_POWER } from "../../decibels.ts";
import { speakerDecibels } from "../../listening/speaker/response.ts";
import { HEARD_RANGE_DB } from "../band-energies.ts";
import { SLICES } from "../slices.ts";
import { excitation } from "./auditory-filter.ts";
import { thresholdDb } from "./threshold.ts";

/** What stands between the jack and the ear: the stated 12-inch speaker, or nothing. */
export const THROUGH = ["speaker", "none"] as const;
export type Through = (typeof THROUGH)[number];

/** As loud as a guitar is played at home, dB SPL by the K-weighting; a choice, no source. */
export const PLAYED_AT_DB = 80;
/** What a quiet room leaves in every band of the ear, dB SPL, some 35 dB in all; a choice, no source. */
export const ROOM_DB = PLAYED_AT_DB - HEARD_RANGE_DB;

/** One sound as the ear has it, played equally loud as any other. */
export interface HeardSound {
  /** Level of what each ERB band's filter holds, dB SPL, threshold and room included: what is under them moves nothing. */
  readonly levelsDb: Float64Array;
  /** LU above an arbitrary zero that all share, through the same. */
  readonly loudnessLu: number;
}

const GAIN: Readonly<Record<Through, Float64Array>> = {
  speaker: SLICES.frequenciesHz.map((hertz) => powerFromDecibels(speakerDecibels(hertz))),
  none: SLICES.frequenciesHz.map(() => 1),
};

/** Power of threshold and room together, by band. */
const FLOOR = Float64Array.from(
  SLICES.bands,
  ({ centre }) => powerFromDecibels(thresholdDb(centre)) + powerFromDecibels(ROOM_DB),
);

/** Levels of the bands where nothing sounds. */
export const FLOOR_DB = FLOOR.map(powerDecibels);

/**
 * The excitation level of a sound in every ERB band once it is as loud as all others, by what is left of it through the speaker, over
 * masking, threshold and room. Masking is the spread of excitation, and two sounds are told apart where their excitation levels are
 * (E. Zwicker, J. Acoust. Soc. Am. 28, 1956, from memory; B. C. J. Moore, An Introduction to the Psychology of Hearing, ch. 3 and 4).
 * @param energies of every slice, as `energiesFor` gives them; of silence only threshold and room are left
 */
export function heardSound(energies: Float64Array, through: Through = "speaker"): HeardSound {
  const gain = GAIN[through];
  const left = energies.map((energy, k) => energy * gain[k]!);
  const loudness = left.reduce((sum, energy, k) => sum + energy * SLICES.kGain[k]!, 0);
  const toLevel = loudness > 0 ? powerFromDecibels(PLAYED_AT_DB) / loudness : 0;
  const levelsDb = excitation(left).map((power, band) => powerDecibels(power * toLevel + FLOOR[band]!));
  return { levelsDb, loudnessLu: powerDecibels(loudness) };
}

/** The same, or null of what gives no sound at all. */
export function heardIfAny(energies: Float64Array): HeardSound | null {
  return energies.reduce((sum, energy) => sum + energy, 0) > SILENT_POWER ? heardSound(energies) : null;
}
