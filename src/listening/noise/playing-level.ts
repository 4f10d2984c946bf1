import { aWeight } from "../../audio/a-weighting.ts";
import type { Build } from "../../build-file/schema.ts";
import { coilPlaces, stringSetOf } from "../../response/coil-places.ts";
import type { Transfers } from "../../response/transfers.ts";
import { type PartialEnergy, partialEnergies } from "../../strings/partial-energies.ts";
import { DEFAULT_PHRASE_NAME, phraseNamed } from "../../strings/phrases.ts";
import { type Level, levelOf } from "./level.ts";

/** What the coils of a guard take up of the usual phrase, a chord strummed by the usual hand. */
export interface Playing {
  readonly partials: readonly PartialEnergy[];
  readonly seconds: number;
}

export function playingOn(build: Build, { sources }: Pick<Transfers, "sources">): Playing {
  const phrase = phraseNamed(DEFAULT_PHRASE_NAME);
  return { partials: partialEnergies(phrase, coilPlaces(build, sources), stringSetOf(build)), seconds: phrase.seconds };
}

/** The phrase's level at the jack, RMS over its whole length. */
export function playingLevel({ partials, seconds }: Playing, transfers: Transfers): Level {
  if (partials.length === 0) return levelOf([]);
  const frequenciesHz = Float64Array.from(partials, ({ frequencyHz }) => frequencyHz);
  const spectra = transfers.perSource(frequenciesHz);
  return levelOf(
    partials.map(({ energy, weights, frequencyHz }, index) => {
      let [re, im] = [0, 0];
      for (const [source, spectrum] of spectra.entries()) {
        re += weights[source]! * spectrum.re[index]!;
        im += weights[source]! * spectrum.im[index]!;
      }
      return { power: ((re * re + im * im) * energy) / seconds, weight: aWeight(frequencyHz) };
    }),
  );
}
