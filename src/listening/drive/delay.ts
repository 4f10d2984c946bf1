/** By how much a driven sound is later, in samples: a whole number, which the last of its filters makes up. */
export const DRIVE_DELAY_SAMPLES = 82;
