import { admittance, RADIANS_PER_DEGREE, type RatioSweep } from "../../choice/fit/loaded-ratio.ts";
import { NEPERS_OF_AMPLITUDE_PER_DB } from "../../decibels.ts";
import { faultAt } from "../../errors.ts";

/** A ratio so near to 1 tells no impedance by its angle. */
const TELLING = 0.3;
/** Less than this on the whole is no load: what hung there was not connected, or both recordings are of the same. dB. */
const LEAST_SPREAD_DB = 0.5;

/**
 * Of the impedances that a ratio of voltages makes a coil, (ratio − 1)/Y, the share of those that tell with a resistance under 0: no
 * coil has any. Its level is taken where it is lowest in frequency, where a load hardly shows.
 * @param turn −1 for the ratio the other way about
 */
function activeShare({ frequenciesHz, levelsDb, degrees, load }: RatioSweep, turn: 1 | -1): number {
  let [telling, active] = [0, 0];
  for (const [i, hz] of frequenciesHz.entries()) {
    const size = Math.exp(turn * (levelsDb[i]! - levelsDb[0]!) * NEPERS_OF_AMPLITUDE_PER_DB);
    const angle = turn * degrees[i]! * RADIANS_PER_DEGREE;
    const [re, im] = [size * Math.cos(angle) - 1, size * Math.sin(angle)];
    if (Math.hypot(re, im) < TELLING) continue;
    const y = admittance(load, 2 * Math.PI * hz);
    telling += 1;
    // Re(z/y) has the sign of Re(z·conj(y)).
    if (re * y.re + im * y.im < 0) active += 1;
  }
  return telling > 0 ? active / telling : 0;
}

/**
 * @param path the recording under the load
 * @throws DATA_INSUFFICIENT where the load is in the other recording, or in neither
 */
export function requireLoaded(sweep: RatioSweep, path: string): void {
  const spread = Math.max(...sweep.levelsDb) - Math.min(...sweep.levelsDb);
  if (spread < LEAST_SPREAD_DB) {
    const message = `is the same as \`unloaded\` within ${spread.toFixed(2)} dB: the load was not connected, or both files are of one recording, or of the signal itself`;
    throw faultAt("DATA_INSUFFICIENT", path, message);
  }
  const [asSaid, turned] = [activeShare(sweep, 1), activeShare(sweep, -1)];
  if (asSaid <= 0.5 || turned >= asSaid) return;
  const message = `was recorded with less across the pickup than \`unloaded\` was: the two recordings are exchanged. Send each as the other`;
  throw faultAt("DATA_INSUFFICIENT", path, message);
}
