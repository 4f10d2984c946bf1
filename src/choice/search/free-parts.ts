import type { Build } from "../../build-file/schema.ts";
import type { Patch } from "../variant.ts";

/** A part whose value may be chosen: one of the build, one added between two lugs or into a wire, or the cable. */
export type FreeSpec =
  | { readonly kind: "part"; readonly part: string; readonly values: readonly number[]; readonly orNone: boolean }
  | { readonly kind: "taper"; readonly part: string; readonly values: readonly number[] }
  | { readonly kind: "cable"; readonly values: readonly number[] }
  | {
      readonly kind: "across";
      readonly add: "cap" | "resistor";
      readonly between: readonly [string, string];
      readonly values: readonly number[];
      readonly orNone: boolean;
    }
  | {
      readonly kind: "in-wire";
      readonly wire: readonly [string, string];
      readonly values: readonly number[];
      readonly orNone: boolean;
    }
  | {
      /** A capacitor and a resistor one after the other, such as a treble bleed of the series kind. */
      readonly kind: "series-pair";
      readonly between: readonly [string, string];
      readonly caps: readonly number[];
      readonly resistors: readonly number[];
    };

/** One thing to choose: its candidates, null for leaving it out. */
export interface Free {
  readonly name: string;
  readonly unit: "farads" | "ohms" | "metres" | "fraction";
  readonly values: readonly (number | null)[];
  readonly patchesFor: (value: number | null) => readonly Patch[];
}

export interface SearchSpace {
  /** The build with the added parts in it. */
  readonly build: Build;
  readonly frees: readonly Free[];
}
