import type { PresetName } from "./figures.ts";
import type { Outline, Point } from "./geometry/outline.ts";

/** A shape about a part's middle, the part not turned, in metres: what is sold so, a circle, a rectangle or a line of one's own. */
export type ShapeSaid =
  | PresetName
  | { readonly round: number }
  | { readonly box: readonly [along: number, across: number] }
  | Outline;

export const SIDES = ["bridge", "neck", "bass", "treble"] as const;
export type SideName = (typeof SIDES)[number];

/** What stands out beyond the body on one side: lugs, or a cable. */
export interface Standout {
  readonly side: SideName;
  /** Metres from the part's middle to its farthest point. */
  readonly reach: number;
  /** Metres. */
  readonly width: number;
}

/** What a person measured of one part, in metres; nothing of it is taken for granted. */
export interface PartMeasures {
  readonly outline?: ShapeSaid | undefined;
  /** From the guard's underside to its lowest point, lugs and wires on them included. */
  readonly depth?: number | undefined;
  /** Along the strings and across them, from end to end, ears and base plate included. */
  readonly ears?: readonly [along: number, across: number] | undefined;
  readonly lugs?: Standout | undefined;
  readonly cable?: Standout | undefined;
  /** From the middle of the first pole to that of the last. */
  readonly poleSpacing?: number | undefined;
  /** Length of its thread. */
  readonly bushing?: number | undefined;
  /** What is cut out of the guard for it. */
  readonly hole?: ShapeSaid | undefined;
  /** Middles of its screws, about its own middle. */
  readonly screws?: readonly Point[] | undefined;
}

/** A hole in the body, its line in the guard's frame. */
export interface Cavity {
  readonly name: string;
  readonly outline: Outline;
  /** Metres from the face that the guard lies on to its floor. */
  readonly depth?: number | undefined;
  /** The parts that are to lie in it; absent: whichever do. */
  readonly for?: readonly string[] | undefined;
  /** Metres by which its line may be off, where it is not the usual; a line from a photograph says more. */
  readonly tolerance?: number | undefined;
}

/** From the middle of the first string to that of the last, in metres. */
export interface StringSpread {
  readonly nut: number;
  readonly bridge: number;
  /** Absent: the build's. */
  readonly scale?: number | undefined;
  /** How far a string may pass beside its pole. */
  readonly beside: number;
}

export interface GuardMeasures {
  readonly outline?: Outline | undefined;
  readonly thickness?: number | undefined;
  /** Nut, washers and what else lies about a bushing, one on the other. */
  readonly stack?: number | undefined;
  /** Middles of the screws that hold it to the body. */
  readonly screws?: readonly Point[] | undefined;
  /** Of the hole that a screw has in the wood. */
  readonly screwDiameter?: number | undefined;
}

/** What was measured of a guitar and of what is to go into it. Metres. */
export interface Measures {
  readonly cavities: readonly Cavity[];
  readonly parts: Readonly<Record<string, PartMeasures>>;
  readonly strings?: StringSpread | undefined;
  readonly guard: GuardMeasures;
  /** How far a measured line may be off. */
  readonly tolerance: number;
}

/** Half a millimetre: as well as a line is marked with a pencil and read off a steel rule (common practice, no source). */
export const DEFAULT_TOLERANCE_METRES = 0.0005;
/** Beyond it a string is heard to fade under a pole that it passes beside; common practice, no source. */
export const DEFAULT_BESIDE_METRES = 0.001;
