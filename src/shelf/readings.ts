import { withVersion } from "./amend.ts";
import type { Guard, KeptReadings } from "./guard.ts";

/** Readings on top of those that a guard has, the latest day first; those of one day and one note are one set. */
export function withReadings(guard: Guard, added: KeptReadings, at: Date): Guard {
  const old = guard.readings.find(({ date, note }) => date === added.date && note === added.note);
  const set = old ? { ...old, values: [...old.values, ...added.values] } : added;
  const rest = guard.readings.filter((each) => each !== old);
  const readings = [set, ...rest].sort((a, b) => (a.date < b.date ? 1 : a.date > b.date ? -1 : 0));
  return { ...guard, readings, changed: at.toISOString() };
}

/** A guard without a set of readings; the history has them all still. */
export function withoutReadings(guard: Guard, id: string, at: Date): Guard {
  const { readings } = guard;
  const changed = at.toISOString();
  const history = withVersion(guard.history, { at: changed, by: "change", was: { readings } });
  return { ...guard, readings: readings.filter((each) => each.id !== id), changed, history };
}
