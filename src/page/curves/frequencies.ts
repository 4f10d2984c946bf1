import { logSpaced } from "../../response/frequencies.ts";

/** 32 points an octave: a resonance of the sharpest unloaded coil still looks round. */
export const FREQUENCIES_HZ = logSpaced(20, 20_000, 320);
