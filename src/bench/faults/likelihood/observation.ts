import { METER_TOLERANCE } from "../../../build-file/tolerances.ts";
import { isOpen, JOINT_UP_TO_OHMS } from "../../meter/hobby-meter.ts";
import { endOf, errorOhms, meterLogError, withoutLeads } from "../../meter/own/meter-error.ts";
import type { OwnMeter } from "../../meter/own/own-meter.ts";

/** What the person's meter showed. */
export interface Observation {
  /** Ohms; Infinity where the meter showed an open circuit or was over its range. */
  readonly ohms: number;
  /** The end of the meter's range in ohms, where all that it showed is that the reading lies above. */
  readonly above?: number;
  /** The most ohms that it can be, where the range was too coarse to tell it from none; `ohms` is 0 then. */
  readonly below?: number;
  /** Standard deviation of ln (ohms). */
  readonly logError: number;
}

const LEADS_ERROR_OHMS = 0.5;
const OPEN: Observation = { ohms: Number.POSITIVE_INFINITY, logError: 0 };

/** Where the person said which meter is theirs, its own error and leads; else 1 % and half an ohm of leads. */
function ownError(ohms: number, meter: OwnMeter | undefined): number {
  if (meter) return meterLogError(meter, ohms);
  return METER_TOLERANCE + LEADS_ERROR_OHMS / Math.max(ohms, LEADS_ERROR_OHMS);
}

/** The most that stands behind a few digits of a coarse range; undefined where a joint can be told from them. */
function mostOf(shown: number, meter: OwnMeter): number | undefined {
  const error = errorOhms(meter, shown);
  return shown <= error && shown + error > JOINT_UP_TO_OHMS ? shown + error : undefined;
}

/**
 * The observation of a meter. What the display wandered between is about a standard deviation either way: nobody notes the
 * extremes. It never makes the meter better than it is.
 */
export function observe(
  shown: number | null,
  low?: number | null,
  high?: number | null,
  meter?: OwnMeter,
): Observation {
  if (shown === null) return meter ? observeAbove(endOf(meter), meter) : OPEN;
  if (isOpen(shown)) return OPEN;
  const most = meter && mostOf(shown, meter);
  if (most !== undefined) return { ohms: 0, below: withoutLeads(meter!, most), logError: meterLogError(meter!, most) };
  const ohms = meter ? withoutLeads(meter, shown) : shown;
  const own = ownError(shown, meter);
  if (low === undefined || high === undefined || low === null || high === null || low <= 0)
    return { ohms, logError: own };
  return { ohms, logError: Math.max(Math.log(high / low) / 2, own) };
}

/** The observation of a meter over its range: somewhere above its end, which need not be open. */
export function observeAbove(ohms: number, meter?: OwnMeter): Observation {
  if (isOpen(ohms)) return OPEN;
  return { ohms: Number.POSITIVE_INFINITY, above: ohms, logError: meter ? ownError(ohms, meter) : METER_TOLERANCE };
}
