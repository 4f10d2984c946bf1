import type { OwnMeter } from "../meter/own/own-meter.ts";
import type { KickWord } from "./priors.ts";

export type CoilCount = 1 | 2;
export type Pole = "north" | "south";

/** A reading of a meter between two leads, by their index, or from a lead to the metal. */
export interface OhmsTest {
  readonly kind: "ohms";
  readonly a: number;
  /** `METAL` for the pickup's metal. */
  readonly b: number;
}

/** A row of poles tapped, + of the meter on one lead and − on another. */
export interface KickTest {
  readonly kind: "kick";
  readonly row: number;
  readonly plus: number;
  readonly minus: number;
}

export interface CompassTest {
  readonly kind: "compass";
  readonly row: number;
}

export type Test = OhmsTest | KickTest | CompassTest;

export const METAL = -2;

/** What was measured, the person's names left behind. */
export interface Evidence {
  readonly ohms: readonly (OhmsTest & {
    /** null: open. */
    readonly ohms: number | null;
    /** Standard deviation of ln ohms. */
    readonly deviation: number;
    readonly path: string;
  })[];
  readonly kicks: readonly (KickTest & { readonly kick: KickWord; readonly path: string })[];
  readonly compass: readonly (CompassTest & { readonly magnet: Pole; readonly path: string })[];
}

export interface Question {
  readonly leads: readonly string[];
  readonly rows: readonly string[];
  /** Whether the pickup has metal that a meter may reach. */
  readonly hasMetal: boolean;
  /** How many coils there may be. */
  readonly coils: readonly CoilCount[];
  readonly evidence: Evidence;
  /** °C. */
  readonly temperature: number;
  readonly meter?: OwnMeter;
}
