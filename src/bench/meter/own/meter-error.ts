import { LEADS_OHMS } from "../hobby-meter.ts";
import { leadsLeft, type OwnMeter, USUAL_LEADS_OHMS } from "./own-meter.ts";
import { digitOhms, lastMark, rangeFor, topRange } from "./range-for.ts";

/** What is read off a needle has two figures: half a step of the second, at most. */
const NEEDLE_STEP_SHARE = 0.05;

/**
 * How far a meter may be off at a reading, in ohms, display digit included. A needle deflects by m / (m + R), m in the middle
 * of its scale, so that a share e of its arc is e · (R + m)² / m ohms (the series ohmmeter's scale).
 */
export function errorOhms(meter: OwnMeter, ohms: number): number {
  const { ranging, error } = meter;
  const range = meter.range ?? rangeFor(meter, ohms);
  if (ranging === "needle") return Math.max((error.share * (ohms + range) ** 2) / range, NEEDLE_STEP_SHARE * ohms);
  return error.share * ohms + (error.digits + 0.5) * digitOhms(meter, range);
}

interface Bounds {
  readonly low: number | null;
  readonly high: number | null;
}

/** Above so many ohms the meter shows that it is over: the end of the range it stands on, or of its highest. */
export function endOf(meter: OwnMeter): number {
  const { ranging, openFrom, range = topRange(meter) } = meter;
  return Math.min(ranging === "needle" ? lastMark(range) : range, openFrom);
}

/** Between what a meter may show what lies between these ohms: its error, its digit and its leads added; null is over its range. */
export function widened(meter: OwnMeter, { low, high }: Bounds): Bounds {
  const leads = leadsLeft(meter);
  const shown = (ohms: number) => (ohms >= endOf(meter) ? null : ohms);
  const least = low === null || low === 0 ? low : low + leads;
  // What a joint may read has usual leads in it already.
  const most = high === null ? null : high + (high <= LEADS_OHMS ? Math.max(0, leads - USUAL_LEADS_OHMS) : leads);
  return {
    low: least === null ? null : shown(Math.max(0, least - errorOhms(meter, least))),
    high: most === null ? null : shown(most + errorOhms(meter, most)),
  };
}

/** A coil's temperature is known to about a kelvin, and with it its copper to 0.4 %. */
const LEAST_SHARE = 0.004;

/** Standard deviation of ln ohms of what a meter showed, its leads taken off. */
export function meterLogError(meter: OwnMeter, ohms: number): number {
  const held = Math.max(ohms, digitOhms(meter, meter.range ?? rangeFor(meter, ohms)), 0.1);
  return Math.max(LEAST_SHARE, errorOhms(meter, held) / held);
}

/** What a meter showed, its leads' ohms taken off. */
export function withoutLeads(meter: OwnMeter, ohms: number): number {
  return Math.max(0, ohms - leadsLeft(meter));
}
