import { METER_TOLERANCE } from "../../../build-file/tolerances.ts";
import { isOpen } from "../../meter/hobby-meter.ts";

/** What the person's meter showed. */
export interface Observation {
  /** Ohms; Infinity where the meter showed an open circuit or was over its range. */
  readonly ohms: number;
  /** The end of the meter's range in ohms, where all that it showed is that the reading lies above. */
  readonly above?: number;
  /** Standard deviation of ln (ohms). */
  readonly logError: number;
}

const LEADS_ERROR_OHMS = 0.5;
const OPEN: Observation = { ohms: Number.POSITIVE_INFINITY, logError: 0 };

/**
 * The observation of a meter, whose own error is 1 %, and half an ohm of leads. What the display wandered between is about a
 * standard deviation either way: nobody notes the extremes. It never makes the meter better than it is.
 */
export function observe(ohms: number | null, low?: number | null, high?: number | null): Observation {
  if (ohms === null || isOpen(ohms)) return OPEN;
  const own = METER_TOLERANCE + LEADS_ERROR_OHMS / Math.max(ohms, LEADS_ERROR_OHMS);
  if (low === undefined || high === undefined || low === null || high === null || low <= 0)
    return { ohms, logError: own };
  return { ohms, logError: Math.max(Math.log(high / low) / 2, own) };
}

/** The observation of a meter over its range: somewhere above its end, which need not be open. */
export function observeAbove(ohms: number): Observation {
  return isOpen(ohms) ? OPEN : { ohms: Number.POSITIVE_INFINITY, above: ohms, logError: METER_TOLERANCE };
}
