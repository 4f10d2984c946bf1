import type { PositionFigures } from "./position-figures.ts";
import type { Side } from "./screws.ts";
import type { Direction } from "./turn-words.ts";

export interface ScrewTold {
  readonly side: Side;
  /** Metres. */
  readonly gapBefore: number;
  readonly gapAfter: number;
  /** Metres, more is lower. */
  readonly travel: number;
  /** ± metres, 95 %. */
  readonly travelError: number;
  /** Whole eighths, more is lower; null where the pitch is not known. */
  readonly turns: number | null;
  readonly turnsError: number | null;
  readonly direction: Direction;
  readonly clockwise: boolean;
  readonly stoppedBy: "min" | "max" | null;
  readonly text: string;
}

export interface PickupTold {
  readonly name: string;
  readonly law: {
    /** At the middle of the gaps recorded: level falls as the gap to this power there. */
    readonly exponent: number;
    /** ±, 95 %. */
    readonly exponentError: number;
    /** Metres; 0 where the recordings ask for none. */
    readonly offset: number;
    /** dB that a millimetre lower takes, at the gap as it is. */
    readonly perMillimetre: number;
    readonly text: string;
  };
  readonly screws: readonly ScrewTold[];
  /** After over before, on either side, by the field on a rod magnet's axis. */
  readonly pull: { readonly bass: number; readonly treble: number };
}

export interface HeightsTold {
  /** What the levels are: the build's alone, recorded at one height, or recorded at several. */
  readonly basis: "model" | "one height" | "recordings";
  /** Of one string's level in one recording, in dB. */
  readonly precision: number | null;
  readonly pickups: readonly PickupTold[];
  readonly positions: readonly PositionFigures[];
  /** Whether all is within the bound wanted once the screws are turned; null where no turns are told. */
  readonly balanced: { readonly positions: boolean; readonly strings: boolean } | null;
  readonly left: readonly string[];
  readonly warnings: readonly string[];
  readonly next: readonly string[];
  readonly assumed: readonly string[];
}
