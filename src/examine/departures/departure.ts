import type { Edit } from "../../bench/faults/edits/edit.ts";
import type { Fault } from "../../bench/faults/fault.ts";
import type { Unknown } from "../model/unknowns.ts";

/** An unknown that a departure frees of its tolerance, or brings with it. */
export interface Freed {
  readonly part: string;
  readonly field: string;
  readonly deviation: number;
}

/** One way in which a guard may be other than drawn. */
export interface Departure {
  readonly edits: readonly Edit[];
  readonly freed: readonly Freed[];
  /** Unknowns of parts that the edits bring in. */
  readonly added: readonly Unknown[];
  /** Where to begin looking, as ln of multiples of what is drawn, for each of `freed` and then of `added`. */
  readonly starts: readonly (readonly number[])[];
  /**
   * What it is called, all names alike; given how many times what was drawn each of its values has. Empty where that is within
   * the tolerance of a sound part.
   */
  readonly faults: (factors: readonly number[]) => readonly Fault[];
  /** Of two departures at once, instead of `faults`: both of their names, for all that are alike. */
  readonly both?: (factors: readonly number[]) => readonly (readonly Fault[])[];
  /** What it is called where it is so slight that nothing shows; only of what may be so. */
  readonly slight?: readonly Fault[];
}

export const NOTHING: Departure = { edits: [], freed: [], added: [], starts: [[]], faults: () => [] };
