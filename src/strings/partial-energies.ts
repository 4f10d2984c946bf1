import type { CoilPlace } from "./comb.ts";
import type { Note, Phrase } from "./score.ts";
import { type StringSet, soundingString } from "./string-set.ts";
import { strokeOf } from "./stroke.ts";
import { modesOf } from "./synth.ts";
import { nextPluckSeconds } from "./timeline.ts";
import type { Mode } from "./voices.ts";

/** A partial of one note in all its planes: what it holds over the time that it sounds. */
export interface PartialEnergy {
  readonly frequencyHz: number;
  /** ∫ motion² dt; a coil's EMF has it times its own weight squared. */
  readonly energy: number;
  /** Volts per unit motion, one for each coil, signed. */
  readonly weights: Float64Array;
}

/** Partials over it are none of the bands that are compared. */
const RATE_HZ = 40_000;

/** ∫₀ᵀ a·b·e^(−σt)·cos(Δt)/2 dt for two decaying sines: their products' slow part; what beats at the sum of both is nothing beside it. */
function product(a: Mode, b: Mode, seconds: number): number {
  const decay = a.decayPerSecond + b.decayPerSecond;
  const apart = a.radiansPerSecond - b.radiansPerSecond;
  const left = Math.exp(-decay * seconds);
  const [real, imaginary] = [1 - left * Math.cos(apart * seconds), left * Math.sin(apart * seconds)];
  return ((a.amplitude * b.amplitude) / 2) * ((real * decay + imaginary * apart) / (decay * decay + apart * apart));
}

function energyOf(planes: readonly Mode[], seconds: number): number {
  return planes.reduce((sum, a) => planes.reduce((inner, b) => inner + product(a, b, seconds), sum), 0);
}

function soundingSeconds(phrase: Phrase, note: Note): number {
  const until = Math.min(nextPluckSeconds(phrase, note), phrase.seconds) - note.timeSeconds;
  return Math.max(0, Math.min(note.durationSeconds, until));
}

/**
 * Every partial that a phrase sets going, without rendering it: strings that are plucked and ring until they are damped, in closed
 * form. Bends and swells are left out, and so is the plectrum's scrape, which is no partial's. Beside a rendered
 * phrase this takes no time; test/choice/map/plucked-drive.test.ts holds one to the other.
 * @throws REQUEST_INVALID for a string, fret or pluck place outside its range, naming it
 */
export function partialEnergies(phrase: Phrase, coils: readonly CoilPlace[], strings: StringSet): PartialEnergy[] {
  return phrase.notes.flatMap((note) => {
    const string = soundingString(strings, note.string, note.fret);
    const seconds = soundingSeconds(phrase, note);
    // The planes of one partial share their list of weights.
    const partials = new Map<Float64Array, Mode[]>();
    for (const mode of modesOf(note, string, strokeOf(note, string), coils, RATE_HZ))
      partials.set(mode.weights, [...(partials.get(mode.weights) ?? []), mode]);
    return Array.from(partials, ([weights, planes]) => ({
      frequencyHz: planes[0]!.radiansPerSecond / (2 * Math.PI),
      energy: energyOf(planes, seconds),
      weights,
    }));
  });
}
