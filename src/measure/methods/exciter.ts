import type { Checkpoint } from "../../checkpoint.ts";
import { NEPERS_OF_AMPLITUDE_PER_DB } from "../../decibels.ts";
import { faultAt } from "../../errors.ts";
import { type EmfSlope, emfSlope, type HeardCoil, type Reference, wholeErrors } from "../emf/emf-slope.ts";
import { fitMetal, type MetalFit } from "../emf/fit-metal.ts";

/** Frequencies from which the slope may be off, and by how much. */
interface Systematic {
  readonly frequencyHz: number;
  readonly decibels: number;
}

/**
 * The exciter's own inductance rises over steel and its current falls: at most so much, reckoned from the open data set
 * strayr/pickupAnalyseR-data, CC0-1.0, where one exciter lay on coils with and without steel.
 */
export const SYSTEMATIC: readonly Systematic[] = [
  { frequencyHz: 1000, decibels: 0.15 },
  { frequencyHz: 3000, decibels: 1 },
];

export interface MetalFound extends MetalFit {
  readonly slope: EmfSlope;
  /** Standard errors of the slope, in nepers. */
  readonly errors: readonly number[];
  readonly notes: readonly string[];
}

/** More than a fit by two loads may leave of a real coil: it is then of no form that metal makes. */
const MOST_LEFT_DB = 0.55;
/** Deviations by which a coil's values may have to move before it is told. */
const STRAINED = 3;

/** @throws DATA_INSUFFICIENT where no metal makes such a slope */
function requireClose({ left }: MetalFit, slope: EmfSlope): void {
  const decibels = left / NEPERS_OF_AMPLITUDE_PER_DB;
  if (decibels <= MOST_LEFT_DB) return;
  const rises = slope.nepers.at(-1)! > 0 ? ", which rises at its end, as no metal makes it" : "";
  const message =
    `no metal comes nearer to the slope than ${decibels.toFixed(2)} dB${rises}; expected at most ${MOST_LEFT_DB} dB. One coil's values` +
    " or the integrator's corner are wrong, the two coils' recordings are swapped, or the exciter was moved meanwhile";
  throw faultAt("DATA_INSUFFICIENT", "reference", message);
}

const EXCITER_NOTE =
  "The exciter's own inductance rises over steel, which may pass for up to 0.15 dB at 1 kHz and 1 dB above 3 kHz of what the metal" +
  " takes; no standard error here holds it. A string is no exciter coil either, but metal shields from both alike.";

/** Whether the exciter alone may have made all that was found. */
function isWithinSystematic({ metals }: MetalFit): boolean {
  return metals.length === 1 && metals.every((metal) => "depth" in metal && metal.depth <= SYSTEMATIC.at(-1)!.decibels);
}

function notesOn(fit: MetalFit): string[] {
  const worst = fit.moved.reduce((most, each) => Math.max(most, Math.abs(each)), 0);
  return [
    EXCITER_NOTE,
    ...(isWithinSystematic(fit)
      ? ["What was found is no more than the exciter may make by itself: it may be nothing."]
      : []),
    ...(worst > STRAINED
      ? [
          `The slope fits only with a coil's values moved by ${worst.toFixed(1)} of their standard deviations: those given for the pickup or for the reference are likely wrong, or less sure than said.`,
        ]
      : []),
  ];
}

/**
 * What metal about a pickup takes of its EMF.
 * @throws DATA_INSUFFICIENT where noise leaves too little, or where no metal makes such a slope
 */
export function metalAbout(pickup: HeardCoil, reference: Reference, context: Checkpoint): MetalFound {
  const slope = emfSlope(pickup, reference);
  const fit = fitMetal(slope, context);
  requireClose(fit, slope);
  return { ...fit, slope, errors: wholeErrors(slope), notes: notesOn(fit) };
}
