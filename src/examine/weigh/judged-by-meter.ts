import { type ForetoldReading, foretoldReadings, readingsFit } from "./foretold-readings.ts";
import type { Group } from "./groups.ts";
import type { MeterReadings } from "./meter-readings.ts";

/** So many of the likeliest answers are asked what they would make the meter read. */
const MOST_JUDGED = 8;

/** What a group's guard would make the meter read, its parts where the takes have them. */
export function foretoldBy({ judge }: MeterReadings, { names, isSound, leader }: Group): ForetoldReading[] {
  if (judge.plans.length === 0) return [];
  return foretoldReadings(judge, isSound ? [] : names[0]!.faults, leader.weighed);
}

/** The groups with how well each accounts for a meter's readings beside the takes. */
export function judgedByMeter(meter: MeterReadings, groups: readonly Group[]): Group[] {
  if (meter.judge.plans.length === 0) return [...groups];
  return groups.map((group, index) =>
    index < MOST_JUDGED ? { ...group, readingsFit: readingsFit(foretoldBy(meter, group)) } : group,
  );
}
