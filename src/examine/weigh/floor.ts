/**
 * What the model of a guard is trusted to, as a fraction of its impedance. Fifteen real coils (open data set strayr/pickupAnalyseR-data,
 * CC0-1.0; test/measured/measured-coils.ts) lie within 0.07 to 0.33 dB RMS, 0.8 to 3.9 %, of the best coil with one section of loss; a
 * coil here has two free shelves beside, which take most of it: from memory, a third to a half is left.
 */
export const FLOOR = 0.01;
export const FLOOR_SOURCE =
  "Fifteen measured coils (open data set, CC0-1.0) lie within 0.8 to 3.9 % RMS of the best model with one section of loss; with two free ones beside it about 1 % is taken to be left (from memory).";

/** What a model gets wrong goes together over about an octave: so many of the frequencies used count as one. */
export const TOGETHER = 4;

/** Of one channel in the other, and of what bends in a converter: 80 dB under what is played (common practice, no source). */
export const CROSSTALK = 1e-4;

/** Of an exciter's field and in what it couples into besides its coil, a share of the strongest take. */
export const STRAY_FIELD = 0.01;

/** A placement this many times as faint as the loudest may be heard by its stray field alone. */
export const FAINT = 0.3;

/** Between the first look and the last, while parts are still on their way. */
export const NARROWED_FLOOR = 2 * FLOOR;

/** The first look is linear about the drawing: what tolerances bend beyond that is granted as so much more of a floor. */
export const FIRST_FLOOR = 0.06;
