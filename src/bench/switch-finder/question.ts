import type { BuildInput } from "../../build-file/schema.ts";

export interface FoundLug {
  /** What the person calls it. */
  readonly name: string;
  /** Column from the left and row from the top, as it sits, seen from the back. */
  readonly spot?: { readonly x: number; readonly y: number } | undefined;
}

/** What was heard at two lugs: in all positions, in one of them, or with the handle held between two. */
export interface BeepTold {
  readonly between: readonly [string, string];
  /** Of all positions, those in which it beeps. */
  readonly positions?: readonly number[] | undefined;
  readonly position?: number | undefined;
  readonly betweenPositions?: readonly [number, number] | undefined;
  readonly beeps?: boolean | undefined;
}

export interface SwitchQuestion {
  readonly lugs: readonly FoundLug[];
  /** How many the handle has. */
  readonly positions: number;
  readonly beeps: readonly BeepTold[];
  /** Chance that one touch is misheard. */
  readonly errors: number;
  /** The guard to put it in, in its long form. */
  readonly source?: BuildInput | undefined;
  /** The switch of that guard whose place it takes. */
  readonly part?: string | undefined;
  /** From a lug of that switch to the found lug that takes its wires, where that cannot be told from the types. */
  readonly moves: Readonly<Record<string, string>>;
}
