import { faultAt } from "../errors.ts";
import { MAX_AUDIO_SECONDS, MAX_SAMPLE_RATE_HZ, MIN_SAMPLE_RATE_HZ } from "../limits.ts";
import { type CoilPlace, coilWeight, partialFrequencyHz, pluckWeight, USUAL_PLUCK } from "./comb.ts";
import { CHOKE_BEFORE_SECONDS, CHOKE_PER_SECOND, decayPerSecond, palmPerSecond, RELEASE_PER_SECOND } from "./decay.ts";
import { addNote, BLOCK, type Mode, type Timeline } from "./modes.ts";
import { countPartials } from "./partials.ts";
import type { Bend, Note, Phrase } from "./score.ts";
import { type SoundingString, type StringSet, soundingString } from "./string-set.ts";

/**
 * Sets the level of everything: `REFERENCE_COIL` playing the open chord strum peaks at 0.3 V. Hundreds of millivolts are common practice for a single coil, no source.
 */
const VOLTS_PER_UNIT = 0.0995;
/** Leaves the top of the band free for the converter's filter. */
const HIGHEST_PARTIAL_PER_RATE = 0.45;
/** High on the neck the hand moves towards the bridge; short of the middle, where every even partial would vanish. */
const HIGH_PLUCK_FRACTION = 0.4;

/**
 * Plays a phrase on the strings and gives each coil's EMF in volts, `phrase.seconds` long, all from the same plucks. Linear:
 * no magnet pull, no coil saturation. The same arguments give the same samples.
 * `checkpoint` is called now and then and may throw to end the work.
 * @throws REQUEST_INVALID for a sample rate, string, fret or pluck place outside its range, naming it.
 */
export function renderPhrase(
  phrase: Phrase,
  coils: readonly CoilPlace[],
  strings: StringSet,
  sampleRateHz: number,
  checkpoint?: () => void,
): Float32Array[] {
  checkExtent(phrase.seconds, sampleRateHz);
  const length = Math.round(phrase.seconds * sampleRateHz);
  const outputs = coils.map(() => new Float32Array(length));
  for (const note of phrase.notes) {
    const modes = modesOf(note, coils, strings, sampleRateHz);
    addNote(outputs, modes, timelineOf(note, nextPluckSeconds(phrase, note), length, sampleRateHz), checkpoint);
  }
  return outputs;
}

function checkExtent(seconds: number, sampleRateHz: number): void {
  if (!(sampleRateHz >= MIN_SAMPLE_RATE_HZ && sampleRateHz <= MAX_SAMPLE_RATE_HZ)) {
    const expected = `${MIN_SAMPLE_RATE_HZ} to ${MAX_SAMPLE_RATE_HZ} Hz`;
    throw faultAt("REQUEST_INVALID", "rate", `${sampleRateHz} given, expected ${expected}`);
  }
  if (!(seconds > 0 && seconds <= MAX_AUDIO_SECONDS)) {
    throw faultAt(
      "REQUEST_INVALID",
      "seconds",
      `${seconds} given, expected more than 0 and up to ${MAX_AUDIO_SECONDS}`,
    );
  }
}

function nextPluckSeconds(phrase: Phrase, note: Note): number {
  let next = Number.POSITIVE_INFINITY;
  for (const other of phrase.notes) {
    if (other.string === note.string && other.timeSeconds > note.timeSeconds) next = Math.min(next, other.timeSeconds);
  }
  return next;
}

function modesOf(note: Note, coils: readonly CoilPlace[], strings: StringSet, sampleRateHz: number): Mode[] {
  const string = soundingString(strings, note.string, note.fret);
  const widthMetres = note.pluckWidthMetres ?? USUAL_PLUCK.widthMetres;
  const pluck = { placeMetres: pluckPlace(note, string), widthMetres };
  const highestHz = (HIGHEST_PARTIAL_PER_RATE * sampleRateHz) / 2 ** (Math.max(0, note.bend?.semitones ?? 0) / 12);
  return Array.from({ length: countPartials(string, highestHz) }, (_, index) => {
    const n = index + 1;
    const frequencyHz = partialFrequencyHz(string, n);
    return {
      radiansPerSecond: 2 * Math.PI * frequencyHz,
      decayPerSecond: decayPerSecond(string.decay, frequencyHz) + (note.muted ? palmPerSecond(frequencyHz) : 0),
      amplitude: note.velocity * pluckWeight(string, pluck, n),
      weights: Float64Array.from(coils, (coil) => VOLTS_PER_UNIT * coilWeight(string, coil, n)),
    };
  });
}

function pluckPlace(note: Note, string: SoundingString): number {
  const place = note.pluckMetres ?? Math.min(USUAL_PLUCK.placeMetres, HIGH_PLUCK_FRACTION * string.lengthMetres);
  if (place > 0 && place < string.lengthMetres) return place;
  const expected = `between 0 and the string's ${string.lengthMetres.toFixed(3)} m at fret ${note.fret}`;
  throw faultAt("REQUEST_INVALID", "pluckMetres", `${place} given, expected ${expected}`);
}

function timelineOf(note: Note, nextPluck: number, length: number, sampleRateHz: number): Timeline {
  const firstSample = Math.ceil(note.timeSeconds * sampleRateHz);
  const edges = Math.max(0, Math.ceil((length - firstSample) / BLOCK)) + 1;
  const choke = nextPluck - CHOKE_BEFORE_SECONDS - note.timeSeconds;
  const timeline = {
    firstSample,
    seconds: new Float64Array(edges),
    bentSeconds: new Float64Array(edges),
    damping: new Float64Array(edges),
  };
  for (let edge = 0; edge < edges; edge += 1) {
    const seconds = (firstSample + edge * BLOCK) / sampleRateHz - note.timeSeconds;
    timeline.seconds[edge] = seconds;
    timeline.bentSeconds[edge] = note.bend ? bentTime(note.bend, seconds) : seconds;
    timeline.damping[edge] =
      RELEASE_PER_SECOND * Math.max(0, seconds - note.durationSeconds) +
      CHOKE_PER_SECOND * Math.max(0, seconds - choke);
  }
  return timeline;
}

/** ∫ 2^(s(t)/12) dt, with s rising in a straight line from 0 to the bend's semitones. */
function bentTime(bend: Bend, seconds: number): number {
  const span = bend.toSeconds - bend.fromSeconds;
  const slope = (bend.semitones * Math.LN2) / 12;
  const before = Math.min(seconds, bend.fromSeconds);
  const during = Math.min(Math.max(0, seconds - bend.fromSeconds), span);
  const after = Math.max(0, seconds - bend.toSeconds);
  const rising = slope === 0 || span === 0 ? during : (Math.expm1((slope * during) / span) * span) / slope;
  return before + rising + after * Math.exp(slope);
}
