/** Degrees between the ways a part can be turned: fine enough for lugs to face each other, coarse enough to line parts up. */
export const TURN_STEP_DEGREES = 15;
