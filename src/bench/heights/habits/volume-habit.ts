import { DIAL_MAX, type Settings } from "../../../build-file/settings.ts";
import { SILENCE_DB } from "../../../decibels.ts";
import { matchingDial } from "./matching-dial.ts";
import type { PlayedGuard } from "./played-guard.ts";

/** Less is not heard. A choice, no source. */
const AS_LOUD_DB = 0.1;

export interface VolumeHabit {
  /** Of the main switch, from 1. */
  readonly position: number;
  /** dB, the new guard minus the old one; null where either is silent. */
  readonly difference: number | null;
  /** The new volume's dial that is as loud as the old one at 10, or the old one's that is as loud as the new one at 10. */
  readonly dial: number | null;
  readonly text: string;
}

/** Less is hardly heard from one day to the next; a choice. */
const NOTICED_DB = 1;

function dialAt(guard: PlayedGuard, position: Settings, wantedDb: number): number | null {
  const volumes = guard.active("volume", position);
  if (volumes.length === 0) return null;
  return matchingDial((dial) => guard.levelIn(guard.turned(position, volumes, dial)), wantedDb, AS_LOUD_DB);
}

/** How loud a position is beside what it was, and where the volume goes. */
export function volumeHabit(from: PlayedGuard, to: PlayedGuard, index: number): VolumeHabit {
  const [old, now] = [from.positions[index]!, to.positions[index]!];
  const [before, after] = [from.levelIn(old), to.levelIn(now)];
  const position = index + 1;
  if (before <= SILENCE_DB / 2 || after <= SILENCE_DB / 2)
    return { position, difference: null, dial: null, text: `Position ${position} is silent in one of the guards.` };
  const difference = after - before;
  const start = `Position ${position} will be`;
  if (Math.abs(difference) < NOTICED_DB) {
    const rest = Math.abs(difference) < 0.05 ? "" : `, but for ${Math.abs(difference).toFixed(1)} dB`;
    return { position, difference, dial: null, text: `${start} as loud as it was${rest}.` };
  }
  const louder = difference > 0;
  const dial = louder ? dialAt(to, now, before) : dialAt(from, old, after);
  const size = `${start} ${Math.abs(difference).toFixed(1)} dB ${louder ? "louder" : "softer"}`;
  if (dial === null)
    return { position, difference, dial, text: `${size}, and no volume knob brings one to the other.` };
  const place = dial.toFixed(1);
  const text = louder
    ? `${size}: where the volume stood at ${DIAL_MAX} it stands at ${place}.`
    : `${size}: at ${DIAL_MAX} it is as loud as the old one was at ${place}.`;
  return { position, difference, dial, text };
}
