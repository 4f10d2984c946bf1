import { partialFrequencyHz, pluckWeight } from "./comb.ts";
import { decayPerSecond } from "./decay.ts";
import type { SoundingString } from "./string-set.ts";
import type { Stroke } from "./stroke.ts";

/** One partial's motion in one plane, as a coil takes it up. */
export interface PlaneMode {
  readonly frequencyHz: number;
  readonly decayPerSecond: number;
  /** Signed, in the unit of `pluckWeight`; the coil's weight comes on top. */
  readonly amplitude: number;
}

/**
 * A string vibrates towards the pickup and across, and each plane has its own frequency and decay: together they beat, and once the
 * sooner has died the slower is heard (G. Weinreich, J. Acoust. Soc. Am. 62, 1474, 1977, for the piano; from memory).
 *
 * Measured: that the pickup is far more sensitive to motion towards it, and that the neck's yielding adds to the string's own damping
 * there (A. Paté, J.-L. Le Carrou and B. Fabre, J. Acoust. Soc. Am. 135, 3045, 2014). The figures are from memory, no source; the two
 * decays are chosen so that the first 25 dB fall as the measured times say (test/strings/two-planes.test.ts). Recorded notes of another
 * guitar fall in two stages as well, more plainly than these (test/strings/recorded-strings.test.ts).
 */
const ACROSS_SENSED = 0.2;
/** Of the frequency: nut, fret and bridge hold a string a little longer in one plane than in the other; half a hertz at 330 Hz. */
const PLANE_SPLIT = 0.0015;
/** On the supports' share of the decay; the wire's friction is the same in both planes. */
const SUPPORT_TOWARDS = 1.05;
const SUPPORT_ACROSS = 0.35;
/** Above it the two are rendered as one, to save time: they would beat six times a second and faster, far under the loudest partials. */
export const TWO_PLANES_UP_TO_HZ = 4000;

/** Partial n after a stroke: in two planes, or as one where the second is not to be heard apart. */
export function planeModes(string: SoundingString, stroke: Stroke, n: number): PlaneMode[] {
  const frequencyHz = partialFrequencyHz(string, n);
  const amplitude = pluckWeight(string, stroke, n);
  const slant = (stroke.slantDegrees * Math.PI) / 180;
  const [towards, across] = [Math.cos(slant), ACROSS_SENSED * Math.sin(slant)];
  const { decay } = string;
  const ringing = (support: number, hertz: number, share: number): PlaneMode => ({
    frequencyHz: hertz,
    decayPerSecond: decayPerSecond({ ...decay, support: support * decay.support }, hertz),
    amplitude: share * amplitude,
  });
  if (frequencyHz > TWO_PLANES_UP_TO_HZ) return [ringing(SUPPORT_TOWARDS, frequencyHz, towards + across)];
  const first = ringing(SUPPORT_TOWARDS, frequencyHz, towards);
  return across === 0 ? [first] : [first, ringing(SUPPORT_ACROSS, frequencyHz * (1 + PLANE_SPLIT), across)];
}
