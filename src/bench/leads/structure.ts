import type { CoilCount } from "./question.ts";

/** Ends of coils by number: start and finish of the first coil are 0 and 1, of the second 2 and 3. */
export type End = 0 | 1 | 2 | 3;

export const coilOf = (end: End): 0 | 1 => (end < 2 ? 0 : 1);
export const isFinish = (end: End): boolean => end % 2 === 1;
export const otherEnd = (end: End): End => (end ^ 1) as End;

export type Arrangement = "one" | "apart" | "series" | "parallel";

/** A point that leads may be soldered to: ends of coils that meet there, and the metal where it is tied there. */
export interface Place {
  readonly ends: readonly End[];
  readonly hasMetal: boolean;
}

/** A pickup before its leads have names: which ends meet, how many leads each place has, what is broken. */
export interface Structure {
  readonly coils: CoilCount;
  readonly arrangement: Arrangement;
  readonly places: readonly Place[];
  /** Index of the place where the metal is; −1 where no lead reaches it. */
  readonly metalAt: number;
  readonly leadCounts: readonly number[];
  /** Leads joined to nothing. */
  readonly spares: number;
  /** By coil: open inside. */
  readonly broken: readonly [boolean, boolean];
  /** Prior weight, shared by all the ways to name its leads. */
  readonly weight: number;
}
