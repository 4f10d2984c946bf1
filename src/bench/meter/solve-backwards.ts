import { METER_TOLERANCE } from "../../build-file/tolerances.ts";
import { faultAt } from "../../errors.ts";

export interface Solved {
  readonly ohms: number;
  readonly low: number;
  readonly high: number;
}

function inParallelBack(reading: number, track: number): number {
  return (reading * track) / (track - reading);
}

/**
 * The coil behind a reading at the jack with the volume at 10, where the meter sees coil and whole track in parallel:
 * coil = reading · track / (track − reading).
 * @param reading ohms at the jack
 * @param track ohms of the volume pot
 * @param trackTolerance fraction by which the track may be off
 * @throws PresolderError REQUEST_INVALID where no coil gives such a reading
 */
export function coilFromReading(reading: number, track: number, trackTolerance = 0): Solved {
  const [lowReading, highReading] = [reading * (1 - METER_TOLERANCE), reading * (1 + METER_TOLERANCE)];
  const [lowTrack, highTrack] = [track * (1 - trackTolerance), track * (1 + trackTolerance)];
  if (!(reading > 0) || !(highReading < lowTrack)) {
    const message = `is ${reading} ohms; a coil in parallel with a track of ${track} ohms (tolerance ${trackTolerance}) reads above 0 and below the track`;
    throw faultAt("REQUEST_INVALID", "solve.coil.reading", message);
  }
  return {
    ohms: inParallelBack(reading, track),
    low: inParallelBack(lowReading, highTrack),
    high: inParallelBack(highReading, lowTrack),
  };
}

/**
 * Coil and track from two readings at the jack: at volume 10 (coil ∥ track) and the highest while the volume is swept,
 * which is (track + coil) / 4. Coil and track are then the roots of t² − 4·highest·t + 4·highest·atTen = 0.
 * @throws PresolderError REQUEST_INVALID where no pair of parts gives both readings
 */
export function potAndCoilFromSweep(atTen: number, highest: number): { coil: number; pot: number } {
  const sum = 4 * highest;
  const discriminant = sum * sum - 4 * atTen * sum;
  if (!(atTen > 0) || !(discriminant >= 0)) {
    const message = `is ${highest} ohms with ${atTen} ohms at volume 10; expected above 0 at 10, and a highest reading of at least that`;
    throw faultAt("REQUEST_INVALID", "solve.sweep.highest", message);
  }
  const pot = (sum + Math.sqrt(discriminant)) / 2;
  return { pot, coil: (atTen * sum) / pot };
}
