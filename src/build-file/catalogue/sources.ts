/** What a pickup type's values rest on as a whole; `build-file/sources/pickup-rules.ts` tells it value by value. */
export type PickupBasis = typeof TYPICAL_SINGLE | typeof TYPICAL_HUMBUCKER | typeof AS_MEASURED | typeof WITHIN_RANGES;

/** At or near the published typical inductance. */
export const TYPICAL_SINGLE = "typical-single";
export const TYPICAL_HUMBUCKER = "typical-humbucker";
/** Covered neck singles, wide singles and hot humbuckers. */
export const AS_MEASURED = "as-measured";
/** Where no measurement was found. */
export const WITHIN_RANGES = "within-ranges";
