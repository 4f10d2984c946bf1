import type { DielectricName } from "../../build-file/catalogue/dielectrics.ts";
import type { Fractions } from "../../choice/tolerance/drift.ts";
import type { CapDifference } from "./cap-difference.ts";

/** The worse end of a range of values. */
export interface AtWorst extends CapDifference {
  readonly within: Fractions;
  /** Which end it is, a fraction of the marked value. */
  readonly off: number;
}

/** One dielectric in a cap's place, against an ideal cap of the same marked value. */
export interface DielectricRow {
  readonly dielectric: DielectricName;
  readonly title: string;
  readonly loss: readonly [number, number];
  /** Both caps measured alike: what the dielectric alone does. */
  readonly measured: CapDifference;
  /** At the worse end of its usual tolerance. */
  readonly marked: AtWorst;
  /** At the worse end of what temperature and age may do to it. */
  readonly changed: AtWorst;
}

export interface CapTold {
  readonly cap: string;
  readonly capacitance: number;
  readonly settings: number;
  readonly says: string;
  readonly rows: readonly DielectricRow[];
}

export interface DielectricsTold {
  readonly answer: string;
  readonly caps: readonly CapTold[];
  readonly weighting: string;
  readonly basis: string;
}
