/** What readings say of one hypothesis. */
export interface Evidence {
  /** ln P(readings | this fault). */
  readonly log: number;
  /** Probability, 0 to 1, that readings of a guard with this fault lie at least as far from what it predicts as these. */
  readonly fit: number;
  /** Readings, by their index, that this fault cannot explain. */
  readonly missed: readonly number[];
  /** The reading furthest from what the likeliest parts make of it, those missed aside; −1 where none can be compared. */
  readonly oddest: number;
  /** Most likely ln (value / nominal) of each unknown. */
  readonly deviations: Float64Array;
}
