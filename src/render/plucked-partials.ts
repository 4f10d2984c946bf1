import type { CoilPlace } from "../strings/comb.ts";
import { type PartialEnergy, partialEnergies } from "../strings/partial-energies.ts";
import { DEFAULT_PHRASE_NAME, phraseNamed } from "../strings/phrases.ts";
import { playedBy } from "../strings/score.ts";
import type { StringSet } from "../strings/string-set.ts";
import { DEFAULT_STRING_AGE, type Playing } from "./playing.ts";

/** What the usual phrase is called among the signals. */
export const PLUCKED_PHRASE = DEFAULT_PHRASE_NAME;

/** What each coil takes up of the usual phrase, partial by partial. */
export function pluckedPartials(coils: readonly CoilPlace[], strings: StringSet, playing: Playing): PartialEnergy[] {
  const phrase = phraseNamed(PLUCKED_PHRASE);
  const aged = { ...strings, age: playing.strings ?? DEFAULT_STRING_AGE };
  return partialEnergies(playing.hand ? playedBy(phrase, playing.hand) : phrase, coils, aged);
}
