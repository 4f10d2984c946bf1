import { faultAt } from "../errors.ts";
import { heldBend, singingVibrato, slidesAndLegato } from "./phrases/bends.ts";
import { arpeggio, chordChops, openStrum } from "./phrases/chords.ts";
import { bassLine, mutedRiff } from "./phrases/low-strings.ts";
import { harmonics, singleLine, singlePluck, volumeSwell } from "./phrases/single-notes.ts";
import { doubleStops } from "./phrases/two-strings.ts";
import type { Phrase } from "./score.ts";

/** Scores of the project's own, plain scale and chord material; the first is what a preview plays unless told otherwise. */
export const PHRASES: readonly Phrase[] = [
  openStrum(),
  singlePluck(),
  arpeggio(),
  singleLine(),
  mutedRiff(),
  doubleStops(),
  heldBend(),
  singingVibrato(),
  slidesAndLegato(),
  chordChops(),
  volumeSwell(),
  harmonics(),
  bassLine(),
];

export const DEFAULT_PHRASE_NAME = "strum";

export const PHRASE_NAMES: readonly string[] = PHRASES.map((phrase) => phrase.name);

/** @throws NOT_FOUND naming the phrases there are. */
export function phraseNamed(name: string): Phrase {
  const phrase = PHRASES.find((candidate) => candidate.name === name);
  if (phrase) return phrase;
  throw faultAt("NOT_FOUND", "signal", `no phrase "${name}"; there are ${PHRASE_NAMES.join(", ")}`);
}
