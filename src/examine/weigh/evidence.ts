import type { Point } from "../model/point.ts";
import type { View } from "../model/view.ts";

/** A guard as one departure makes it, at one place of its unknowns. */
export interface Subject {
  readonly viewOf: (settingIndex: number) => View;
  readonly build: Parameters<Point["slotsOf"]>[0];
  /** Pickups that stand in for a broken one: by their name, the broken one's. */
  readonly standIns: ReadonlyMap<string, string>;
  readonly point: Point;
}

/**
 * What evidence says of a guard about a point: −2 ln of its likelihood as `squares` with its slope and its curvature (Gauss and
 * Newton's) in the unknowns it concerns.
 */
export interface Contribution {
  /** Σ ((measured − predicted) / error)², less twice whatever no Gaussian law says. */
  readonly squares: number;
  /** Of `squares`, what is no Gaussian law's; no misfit either. */
  readonly extra: number;
  /** Indexes of the unknowns that it moves with. */
  readonly unknowns: readonly number[];
  /** Jᵀ r, weighted. */
  readonly right: Float64Array;
  /** Jᵀ J, weighted; square, row by row. */
  readonly curvature: Float64Array;
  /** How many measurements count as independent. */
  readonly degrees: number;
}

/** One kind of evidence about a finished guard: takes at its jack, takes of an exciter, taps. */
export interface Evidence {
  /** @param floor what the model is trusted to, a fraction */
  weigh(subject: Subject, floor: number): Contribution;
  /** Guards of equal keys are told apart by nothing in it, whatever the point. */
  keyOf(subject: Omit<Subject, "point">): string;
  /** How far two guards are from each other in it, as chi-square. */
  apart(one: Subject, other: Subject, floor: number): number;
}
