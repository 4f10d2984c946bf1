import type { Build } from "../build-file/schema.ts";
import { coilPlaces, stringSetOf } from "../response/coil-places.ts";
import type { CoilSource } from "../response/pickup-elements.ts";
import { type PartialEnergy, partialEnergies } from "../strings/partial-energies.ts";
import { DEFAULT_PHRASE_NAME, phraseNamed } from "../strings/phrases.ts";
import { playedBy } from "../strings/score.ts";
import { expectPickups } from "./feed.ts";
import { DEFAULT_STRING_AGE, type Playing } from "./playing.ts";

/**
 * What each coil of a guard takes up of the usual phrase, partial by partial.
 * @throws PresolderError SOUND_UNUSABLE for a harness that has no pickup yet
 */
export function pluckedPartials(build: Build, sources: readonly CoilSource[], playing: Playing): PartialEnergy[] {
  expectPickups(sources);
  const phrase = phraseNamed(DEFAULT_PHRASE_NAME);
  const strings = { ...stringSetOf(build), age: playing.strings ?? DEFAULT_STRING_AGE };
  return partialEnergies(
    playing.hand ? playedBy(phrase, playing.hand) : phrase,
    coilPlaces(build, sources),
    strings,
  );
}
