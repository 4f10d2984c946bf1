import { faultAt } from "../errors.ts";
import { MAX_AUDIO_SECONDS, MAX_SAMPLE_RATE_HZ, MIN_SAMPLE_RATE_HZ } from "../limits.ts";
import { type CoilPlace, coilWeight, placeWeight } from "./comb.ts";
import { palmPerSecond, touchPerSecond } from "./decay.ts";
import { addNote } from "./modes.ts";
import { countPartials } from "./partials.ts";
import { highestSemitones } from "./pitch-curve.ts";
import { planeModes } from "./planes.ts";
import type { Note, Phrase } from "./score.ts";
import { scrapeForce, scrapeWeight } from "./scrape.ts";
import { type SoundingString, type StringSet, soundingString } from "./string-set.ts";
import { type Stroke, strokeOf } from "./stroke.ts";
import { nextPluckSeconds, timelineOf } from "./timeline.ts";
import type { Mode } from "./voices.ts";

/**
 * Sets the level of everything: `REFERENCE_COIL` playing the open chord strum peaks at 0.3 V. Hundreds of millivolts are common practice for a single coil, no source.
 */
const VOLTS_PER_UNIT = 0.0898;
/** Leaves the top of the band free for the converter's filter. */
const HIGHEST_PARTIAL_PER_RATE = 0.45;
const NO_FORCE = new Float64Array(0);

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
    const string = soundingString(strings, note.string, note.fret);
    const stroke = strokeOf(note, string);
    expectOnString(stroke, string, note.fret);
    const modes = modesOf(note, string, stroke, coils, sampleRateHz);
    const time = timelineOf(note, nextPluckSeconds(phrase, note), length, sampleRateHz);
    const force = stroke.scrapeSeconds > 0 ? scrapeForce(seedOf(note), sampleRateHz) : NO_FORCE;
    addNote(outputs, modes, time, force, checkpoint);
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

/** Every pluck scrapes a little differently, and the same one always the same. */
function seedOf({ timeSeconds, string, fret }: Note): number {
  return 1 + Math.round(1000 * timeSeconds) + 100_003 * string + 1_009 * Math.round(fret);
}

/** The modes of a note; the scrape drives those towards the pickup. @param sampleRateHz what they are to be rendered at */
export function modesOf(
  note: Note,
  string: SoundingString,
  stroke: Stroke,
  coils: readonly CoilPlace[],
  sampleRateHz: number,
): Mode[] {
  const highestHz = (HIGHEST_PARTIAL_PER_RATE * sampleRateHz) / 2 ** (highestSemitones(note.pitch ?? []) / 12);
  return Array.from({ length: countPartials(string, highestHz) }, (_, index) => index + 1).flatMap((n) => {
    const weights = Float64Array.from(coils, (coil) => VOLTS_PER_UNIT * coilWeight(string, coil, n));
    const strength = note.velocity * string.level * placeWeight(string, stroke, n);
    return planeModes(string, stroke, n).map((plane, index): Mode => {
      const { frequencyHz } = plane;
      const scraped = index === 0 ? scrapeWeight(stroke.scrapeSeconds, string.fundamentalHz, frequencyHz) : 0;
      return {
        radiansPerSecond: 2 * Math.PI * frequencyHz,
        decayPerSecond: plane.decayPerSecond + touched(note, n, frequencyHz),
        amplitude: note.velocity * plane.amplitude,
        drive: strength * scraped,
        weights,
      };
    });
  });
}

/** What lies on the string takes more of a partial: the palm, or a finger at a node. */
function touched(note: Note, n: number, frequencyHz: number): number {
  return (note.muted ? palmPerSecond(frequencyHz) : 0) + (note.harmonic ? touchPerSecond(note.harmonic, n) : 0);
}

function expectOnString({ placeMetres }: Stroke, { lengthMetres }: SoundingString, fret: number): void {
  if (placeMetres > 0 && placeMetres < lengthMetres) return;
  const expected = `between 0 and the string's ${lengthMetres.toFixed(3)} m at fret ${fret}`;
  throw faultAt("REQUEST_INVALID", "pluckMetres", `${placeMetres} given, expected ${expected}`);
}
