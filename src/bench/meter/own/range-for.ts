import { LAST_MARK, type OwnMeter } from "./own-meter.ts";

/** The highest range; a needle's highest scale. */
export function topRange({ ranges }: OwnMeter): number {
  return ranges.at(-1)!;
}

/** Of a needle's scale, in ohms. */
export function lastMark(middle: number): number {
  return middle * LAST_MARK;
}

/** Ohms of one step of the last digit: a decimal one, so that a range which all counts would not fill shows fewer of them. */
export function digitOhms({ counts }: OwnMeter, range: number): number {
  return 10 ** Math.ceil(Math.log10(range / counts) - 1e-9);
}

/** From here on a range's display is over it: half a digit below its end. */
export function overFrom(meter: OwnMeter, range: number): number {
  return range - digitOhms(meter, range) / 2;
}

/** Whether a display can show these ohms on a range: below its end, and no finer than its last digit. */
export function canStandOn(meter: OwnMeter, range: number, ohms: number): boolean {
  const steps = ohms / digitOhms(meter, range);
  return ohms < overFrom(meter, range) && Math.abs(steps - Math.round(steps)) < 1e-6;
}

/**
 * The range to read ohms on: the lowest that holds them, the highest for an open circuit; of a needle the scale whose middle is
 * nearest, where a step of the needle is the smallest share of the reading, of those whose marks reach so far.
 */
export function rangeFor(meter: OwnMeter, ohms: number | null): number {
  const { ranges, ranging, openFrom } = meter;
  if (ohms === null || ohms >= openFrom) return topRange(meter);
  if (ranging !== "needle") return ranges.find((end) => ohms < overFrom(meter, end)) ?? topRange(meter);
  const far = (middle: number) => Math.abs(Math.log(Math.max(ohms, 1) / middle));
  const reaching = ranges.filter((middle) => ohms < lastMark(middle));
  return reaching.reduce((best, middle) => (far(middle) < far(best) ? middle : best), topRange(meter));
}

/** The resistance in ohms that the meter measures through on a range. */
export function sourceOhms({ sourceShare }: OwnMeter, range: number): number {
  return sourceShare * range;
}

/** Amperes through the probes held together on a range. */
export function shortAmps({ testCurrent, ranges }: OwnMeter, range: number): number {
  return (testCurrent * ranges[0]!) / range;
}

/** Amperes through a part on a range: an EMF behind the meter's own resistance. */
export function testAmps(meter: OwnMeter, range: number, ohms: number): number {
  const source = sourceOhms(meter, range);
  return (shortAmps(meter, range) * source) / (source + ohms);
}
