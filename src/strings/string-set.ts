import { faultAt } from "../errors.ts";
import { DEFAULT_SCALE_METRES, METRES_PER_INCH } from "../lengths.ts";
import { aged, DEFAULT_STRING_AGE, type DecayLaw, decayLawOf, type StringAge } from "./decay.ts";

/** One string. `wound` strings carry a round wrap on a core; `coreMetres` is then the core's diameter. */
export interface StringSpec {
  readonly openFrequencyHz: number;
  /** Outer diameter. */
  readonly gaugeMetres: number;
  readonly coreMetres?: number;
  readonly wound: boolean;
}

/** Strings in the players' order: `strings[0]` is string 1, the highest. `scaleMetres` runs from bridge to nut. */
export interface StringSet {
  readonly scaleMetres: number;
  readonly strings: readonly StringSpec[];
  /** "used" where left out. */
  readonly age?: StringAge;
}

/** A string stopped at a fret: all that the combs and the partials need. `number` counts from 1, of `count` strings. */
export interface SoundingString {
  readonly number: number;
  readonly count: number;
  readonly lengthMetres: number;
  /** Of the ideal string without stiffness. */
  readonly fundamentalHz: number;
  /** B in f_n = n·f0·√(1 + B·n²). */
  readonly inharmonicity: number;
  readonly decay: DecayLaw;
  readonly wound: boolean;
  /** EMF for a force of the hand, beside that of a plain 0.010 in E4 string. */
  readonly level: number;
}

/** Steel music wire: Young's modulus and density as used with McFerrin's inharmonicity constant (200 GPa, 7.85 g/cm³). */
const STEEL_MODULUS_PASCALS = 200e9;
const STEEL_DENSITY = 7850;
/**
 * How much stiffer a wound string is than its core taken as round: a hexagon of the same size is 1.22 times, the wrap does the
 * rest. Three wound strings measured 1.80 to 2.26 (recordings named in decay.ts; gauges inferred).
 */
const WOUND_STIFFNESS = 2;
/** How much of the wrap's steel a coil senses: turns across the field with gaps between. From memory, no source. */
const WRAP_SENSED = 0.3;
const CONCERT_A_HZ = 440;
const CONCERT_A_MIDI = 69;
/** Necks with more frets than three octaves are not built. */
const MAX_FRET = 36;

/** Equal temperament from A = 440 Hz (ISO 16). `midi` is the note number, 69 for A4. */
export function noteFrequencyHz(midi: number): number {
  return CONCERT_A_HZ * 2 ** ((midi - CONCERT_A_MIDI) / 12);
}

/** Core of a wound string whose maker does not say: 0.013, 0.0155 and 0.018 in for 0.026, 0.036 and 0.046; common practice, no source. */
export function usualCoreMetres(gaugeMetres: number): number {
  return Math.min(gaugeMetres * 0.9, 0.25 * gaugeMetres + 0.0065 * METRES_PER_INCH);
}

function usualString(midi: number, gaugeInches: number, wound: boolean): StringSpec {
  const gaugeMetres = gaugeInches * METRES_PER_INCH;
  const base = { openFrequencyHz: noteFrequencyHz(midi), gaugeMetres, wound };
  return wound ? { ...base, coreMetres: usualCoreMetres(gaugeMetres) } : base;
}

/** E4 B3 G3 D3 A2 E2 in a light set, gauges from memory (common practice): 0.010 0.013 0.017 plain, 0.026 0.036 0.046 wound. */
export function usualStringSet(scaleMetres: number = DEFAULT_SCALE_METRES): StringSet {
  const strings = [
    usualString(64, 0.01, false),
    usualString(59, 0.013, false),
    usualString(55, 0.017, false),
    usualString(50, 0.026, true),
    usualString(45, 0.036, true),
    usualString(40, 0.046, true),
  ];
  return { scaleMetres, strings };
}

function coreOf(spec: StringSpec): number {
  return spec.wound ? (spec.coreMetres ?? usualCoreMetres(spec.gaugeMetres)) : spec.gaugeMetres;
}

/**
 * Steel of the wrap across the string, in m². A wire w = (D − d)/2 laid turn to turn on a core d has, per metre of string,
 * π(D + d)/2 / w metres of area πw²/4: π²(D² − d²)/16, π/4 of a solid tube.
 */
function wrapArea(spec: StringSpec): number {
  return (Math.PI ** 2 / 16) * (spec.gaugeMetres ** 2 - coreOf(spec) ** 2);
}

/** Mass of a metre of string, in kg. */
export function massPerMetre(spec: StringSpec): number {
  return STEEL_DENSITY * ((Math.PI / 4) * coreOf(spec) ** 2 + wrapArea(spec));
}

/** Newtons, from f0 = √(T/μ) / 2L. */
export function tensionNewtons(spec: StringSpec, scaleMetres: number): number {
  return massPerMetre(spec) * (2 * scaleMetres * spec.openFrequencyHz) ** 2;
}

/**
 * B of the open string, π³·E·d⁴ / (64·T·L²) (Fletcher, Blackham and Stratton, J. Acoust. Soc. Am. 34, 749, 1962; Fletcher &
 * Rossing, The Physics of Musical Instruments, ch. 12; both from memory). A wound string bends as its core, stiffened.
 */
export function inharmonicity(spec: StringSpec, scaleMetres: number): number {
  const stiffness = Math.PI ** 3 * STEEL_MODULUS_PASCALS * coreOf(spec) ** 4;
  const stiffened = spec.wound ? WOUND_STIFFNESS : 1;
  return (stiffened * stiffness) / (64 * tensionNewtons(spec, scaleMetres) * scaleMetres ** 2);
}

/**
 * Cross-section of the iron that a coil senses, in m²: output goes with it at equal speed for plain strings, whatever their steel
 * (abstract of an analytical and experimental study of a pickup, AES e-library item 16938). Of a wound string the core counts whole.
 */
function sensedArea(spec: StringSpec): number {
  const core = coreOf(spec);
  return (Math.PI / 4) * core ** 2 + WRAP_SENSED * wrapArea(spec);
}

/** Kilograms a second: μ·c, with c = 2·L·f0. */
function impedance(spec: StringSpec, scaleMetres: number): number {
  return massPerMetre(spec) * 2 * scaleMetres * spec.openFrequencyHz;
}

/** EMF of one force of the hand: sensed iron × speed, and the speed is force over impedance. */
function levelOf(spec: StringSpec, scaleMetres: number): number {
  const perForce = (string: StringSpec, scale: number) => sensedArea(string) / impedance(string, scale);
  return perForce(spec, scaleMetres) / perForce(usualString(64, 0.01, false), DEFAULT_SCALE_METRES);
}

/**
 * String `number` (1 the highest) stopped at `fret` (0 open). A fret shortens L to L·2^(−m/12) under the same tension, so f0
 * rises by 2^(m/12) and B, which goes as 1/L², by 2^(m/6).
 * @throws REQUEST_INVALID where the set has no such string or the fret is negative or not finite.
 */
export function soundingString(set: StringSet, number: number, fret: number): SoundingString {
  const spec = Number.isInteger(number) ? set.strings[number - 1] : undefined;
  if (!spec) throw faultAt("REQUEST_INVALID", "string", `${number} given, expected 1 to ${set.strings.length}`);
  if (!(fret >= 0 && fret <= MAX_FRET)) {
    throw faultAt("REQUEST_INVALID", "fret", `${fret} given, expected 0 (open) to ${MAX_FRET}`);
  }
  return {
    number,
    count: set.strings.length,
    lengthMetres: set.scaleMetres * 2 ** (-fret / 12),
    fundamentalHz: spec.openFrequencyHz * 2 ** (fret / 12),
    inharmonicity: inharmonicity(spec, set.scaleMetres) * 2 ** (fret / 6),
    decay: aged(decayLawOf(spec), set.age ?? DEFAULT_STRING_AGE, spec.wound),
    wound: spec.wound,
    level: levelOf(spec, set.scaleMetres),
  };
}
