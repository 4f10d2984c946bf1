export const METRES_PER_FOOT = 0.3048;
export const METRES_PER_INCH = 0.0254;

/** 25.5 inch, rounded to the millimetre; common practice, no source. */
export const DEFAULT_SCALE_METRES = 0.648;
