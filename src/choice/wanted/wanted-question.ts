import type { Question } from "./candidate.ts";
import type { Shape } from "./space/shapes.ts";

export interface WantedQuestion extends Question {
  readonly starts: readonly Shape[];
  /** What may sit in a place; where nothing is said, winds of what sits there. */
  readonly pickups: Readonly<Record<string, readonly string[]>>;
  /** Whether switches are added to the best guards. */
  readonly steps: boolean;
}

export interface WantedOptions {
  readonly mostShapes?: number;
  readonly mostTrials?: number;
  /** Guards that meet every wish, after which no more are looked for; without end, everything is tried. */
  readonly enough?: number;
}
