import type { NextListening } from "./next-listening.ts";
import type { NextMeasurement } from "./next-measurement.ts";
import type { NextTrial } from "./next-trial.ts";

/** The one further thing to do: with a meter, by ear, or by hand. */
export type NextCheck = NextMeasurement | NextListening | NextTrial;
