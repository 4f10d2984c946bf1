/** What is added to a wire's run, in metres; common practice, no source. */
export interface Allowances {
  /** On a wire that stays on the guard; jumpers between a part's own lugs get none. */
  readonly slack: number;
  /** Bared at each end. */
  readonly strip: number;
  /** On a wire to the jack, so that the guard can be lifted with the jack in place. */
  readonly jackLoop: number;
  /** On a wire to the spring claw. */
  readonly clawLoop: number;
  /** The shortest wire to a shielding foil, so that the guard can be turned over. */
  readonly foilLength: number;
}

export const DEFAULT_ALLOWANCES: Allowances = {
  slack: 0.015,
  strip: 0.006,
  jackLoop: 0.09,
  clawLoop: 0.09,
  foilLength: 0.135,
};
