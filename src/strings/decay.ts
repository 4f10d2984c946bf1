/** Decay rates are of amplitude: a partial goes as e^(−σt); 6.9/σ is its time to fall 60 dB. Sources stand at the figures. */

/** σ(f) = support + wire·f + bending·f², f in kHz: supports and neck alike everywhere, friction in the wire, air and bending. */
export interface DecayLaw {
  readonly support: number;
  readonly wire: number;
  readonly bending: number;
}

interface MeasuredString {
  readonly openFrequencyHz: number;
  readonly law: DecayLaw;
}

/**
 * Fitted to the median times that partials of a solid-body guitar took to fall 60 dB, by string and band: 234 recorded notes, open
 * to the twelfth fret (set of Ch. Kehling, J. Abeßer, Ch. Dittmar and G. Schuller, DAFx-14, 2014; recordings in the repository
 * mogeadis/GS-Detector). Of the strings' age nothing is told; the wound ones were probably not new. The bands are in test/strings/measured-strings.ts.
 */
const WOUND: readonly MeasuredString[] = [
  { openFrequencyHz: 82.41, law: { support: 0.33, wire: 2.52, bending: 3.54 } },
  { openFrequencyHz: 110, law: { support: 0.34, wire: 0.81, bending: 2.93 } },
  { openFrequencyHz: 146.83, law: { support: 0.47, wire: 1, bending: 0.78 } },
];
const PLAIN: readonly MeasuredString[] = [
  { openFrequencyHz: 196, law: { support: 0.72, wire: 0.83, bending: 0 } },
  { openFrequencyHz: 246.94, law: { support: 0.95, wire: 0.41, bending: 0 } },
  { openFrequencyHz: 329.63, law: { support: 1.3, wire: 0.37, bending: 0 } },
];

function between(low: DecayLaw, high: DecayLaw, share: number): DecayLaw {
  const mix = (name: keyof DecayLaw) => low[name] + share * (high[name] - low[name]);
  return { support: mix("support"), wire: mix("wire"), bending: mix("bending") };
}

/** The measured set is taken for `used`. */
export const STRING_AGES = ["new", "used", "old"] as const;
export type StringAge = (typeof STRING_AGES)[number];
export const DEFAULT_STRING_AGE: StringAge = "used";

/**
 * What age makes of the friction in the wire, supports left as they are: dirt and wear between the windings deaden a wound string's
 * upper partials, a plain one only rusts. That wound strings go dull first is common practice; the factors are from memory, no source.
 */
const FRICTION: Readonly<Record<StringAge, { readonly wound: number; readonly plain: number }>> = {
  new: { wound: 0.55, plain: 0.85 },
  used: { wound: 1, plain: 1 },
  old: { wound: 1.9, plain: 1.25 },
};

/** The law of a string of that age, from that of a used one. */
export function aged(law: DecayLaw, age: StringAge, wound: boolean): DecayLaw {
  const friction = FRICTION[age][wound ? "wound" : "plain"];
  return { support: law.support, wire: friction * law.wire, bending: friction * law.bending };
}

/** How a used string rings: as the measured ones of its sort on either side of its open pitch, the outermost beyond them. */
export function decayLawOf({ openFrequencyHz, wound }: { openFrequencyHz: number; wound: boolean }): DecayLaw {
  const measured = wound ? WOUND : PLAIN;
  const above = measured.findIndex((each) => each.openFrequencyHz >= openFrequencyHz);
  if (above < 0) return measured.at(-1)!.law;
  if (above === 0) return measured[0]!.law;
  const [low, high] = [measured[above - 1]!, measured[above]!];
  const share = Math.log(openFrequencyHz / low.openFrequencyHz) / Math.log(high.openFrequencyHz / low.openFrequencyHz);
  return between(low.law, high.law, share);
}

/** Form from memory: constant and square terms as in Chaigne & Askenfelt, J. Acoust. Soc. Am. 95, 1112 (1994), with the constant-Q term of Fletcher & Rossing, ch. 2. */
export function decayPerSecond({ support, wire, bending }: DecayLaw, frequencyHz: number): number {
  const kilohertz = frequencyHz / 1000;
  return support + wire * kilohertz + bending * kilohertz ** 2;
}

/** What a palm resting at the bridge adds: half a second for 60 dB at the bottom, far less above. Chosen by ear, no source, as are those below. */
export function palmPerSecond(frequencyHz: number): number {
  return 9 + 25 * (frequencyHz / 1000);
}

/** A finger laid on the string at the end of a note: silent in 0.2 s. */
export const RELEASE_PER_SECOND = 60;
/** The plectrum touching a string that still rings, just before the next pluck. */
export const CHOKE_PER_SECOND = 600;
export const CHOKE_BEFORE_SECONDS = 0.012;
/** A finger resting at a node, for a harmonic: where a partial moves most, silent in 0.1 s. */
const TOUCH_PER_SECOND = 70;

/** What a finger at an `order`-th of the string takes of partial n: nothing of those that rest there. */
export function touchPerSecond(order: number, n: number): number {
  return TOUCH_PER_SECOND * Math.sin((n * Math.PI) / order) ** 2;
}
