import { amplitudeFromDecibels } from "../../decibels.ts";

/** The dial's end. */
export const MAX_DRIVE = 10;

/** By how much a step of the dial brings the knee down. */
const DECIBELS_A_STEP = 3.6;
/** Of the curve's slope at 0 over one a volt: there the knee is at 2.8 V, which no passive guitar reaches. */
const DECIBELS_AT_NONE = -9;
/** A strummed chord's peak, which every drive leaves as high as it was. */
const KEPT_VOLTS = 0.25;

/** How hard a stage is driven: volts in, volts out, by `volts · tanh(perVolt · input)`. */
export interface DriveLaw {
  readonly perVolt: number;
  readonly volts: number;
}

/**
 * Our own law, of no published stage: a tanh whose knee, where its end meets its slope at nothing, is 1 V at 2.5, 0.35 V at 5 and 45 mV
 * at 10, 3.6 dB a step. @param drive above 0, MAX_DRIVE at most
 */
export function driveLaw(drive: number): DriveLaw {
  const perVolt = amplitudeFromDecibels(DECIBELS_AT_NONE + DECIBELS_A_STEP * drive);
  return { perVolt, volts: KEPT_VOLTS / Math.tanh(perVolt * KEPT_VOLTS) };
}

export const DRIVE_BASIS =
  "our own law, of no published stage: memoryless, tanh with its knee at 1 V at 2.5, 3.6 dB lower each step (45 mV at 10); a peak of " +
  "0.25 V stays as high as it was, and 0 is linear";
