import { integratedLoudness } from "../audio/loudness.ts";
import type { Sound } from "../audio/sound.ts";
import { truePeak } from "../audio/true-peak.ts";
import type { Encoding } from "../audio/wav-encode.ts";
import { amplitudeFromDecibels, decibels } from "../decibels.ts";

export const LEVELS = ["true", "matched"] as const;
/** `true` keeps the loudness between settings: one gain for all; `matched` brings all to one loudness. */
export type Level = (typeof LEVELS)[number];

/**
 * Three under the target level of EBU R 128: there the most percussive of the phrases keeps its peaks under the ceiling in
 * every setting, so that previews asked for one by one are as loud as each other.
 */
export const MATCHED_LUFS = -26;
/** EBU R 128's ceiling for a production's true peak. */
export const CEILING_DBTP = -1;
/** Dither and rounding add up to one step of 16 bits, a thousandth of this at the ceiling. */
const CEILING_MARGIN_DB = 0.01;

/** What the end of a volume pot leaks of a string, an ohm beside kilohms, stays under it: no sound, and never to be turned up. */
export const INAUDIBLE = amplitudeFromDecibels(-70);

/** Whether no sample of a sound reaches a peak. */
export function isUnder(channels: readonly Float32Array[], peak: number): boolean {
  return channels.every((samples) => samples.every((value) => Math.abs(value) < peak));
}

/** A rendering before its gain. */
export interface Measured {
  /** Null where the sound is silent. */
  readonly lufs: number | null;
  readonly truePeakDbtp: number | null;
}

export interface Levelled extends Measured {
  readonly gainDb: number;
}

/**
 * Loudness and true peak of a rendering. With `nearFullScale` the loudness is read with the peak at full scale and told for the
 * level as it is: a gain applied later then cannot move passages across the absolute gate.
 * @param isSilent whether there is nothing in it but hum and hiss: such a sound is never to be turned up
 */
export function measure(sound: Sound, nearFullScale: boolean, isSilent = false): Measured {
  const peak = truePeak(sound);
  if (isSilent || peak < INAUDIBLE) return { lufs: null, truePeakDbtp: null };
  const truePeakDbtp = decibels(peak);
  if (!nearFullScale) return { lufs: integratedLoudness(sound), truePeakDbtp };
  const atFullScale = integratedLoudness(sound, 1 / peak);
  return { lufs: atFullScale === null ? null : atFullScale + truePeakDbtp, truePeakDbtp };
}

function headroom({ truePeakDbtp }: Measured): number {
  return truePeakDbtp === null ? Number.POSITIVE_INFINITY : CEILING_DBTP - CEILING_MARGIN_DB - truePeakDbtp;
}

/** The gains of a set, known as far as its renderings have been measured. Silence stays as it is. */
export interface Levelling {
  add(measured: Measured): void;
  /** The gain in dB of one of them, if no other will ask for less. */
  gainOf(measured: Measured): number;
}

/** One gain for the whole set: 0 dB, lowered only as far as integers need; floats hold any level. */
function trueLevelling(encoding: Encoding): Levelling {
  let gainDb = 0;
  return {
    add: (measured) => {
      if (encoding !== "float32") gainDb = Math.min(gainDb, headroom(measured));
    },
    gainOf: () => gainDb,
  };
}

/** Gains to one loudness, the highest up to MATCHED_LUFS that keeps every peak under the ceiling. */
function matchedLevelling(): Levelling {
  let target = MATCHED_LUFS;
  return {
    add: (measured) => {
      if (measured.lufs !== null) target = Math.min(target, measured.lufs + headroom(measured));
    },
    gainOf: ({ lufs }) => (lufs === null ? 0 : target - lufs),
  };
}

export function createLevelling(level: Level, encoding: Encoding): Levelling {
  return level === "true" ? trueLevelling(encoding) : matchedLevelling();
}

/** What a rendering measures after its gain. */
export function levelled({ lufs, truePeakDbtp }: Measured, gainDb: number): Levelled {
  const after = (value: number | null) => (value === null ? null : value + gainDb);
  return { gainDb, lufs: after(lufs), truePeakDbtp: after(truePeakDbtp) };
}
