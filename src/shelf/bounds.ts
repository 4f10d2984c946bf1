/** A line of a list. */
export const MAX_LINE_CHARS = 200;
/** Four pages of notes. */
export const MAX_NOTES_CHARS = 10_000;
/** The largest build file stays under 100 kB; anything far above it is another kind of file. */
export const MAX_FILE_CHARS = 1 << 20;
/** Sets of one guard: one a week for ten years. */
export const MAX_READINGS = 500;
/** Of one set: every reading of the busiest customary guard's table takes a tenth. */
export const MAX_VALUES = 1000;
