import { withVersion } from "./amend.ts";
import { MAX_VALUES } from "./bounds.ts";
import type { Guard, KeptReadings, KeptValue } from "./guard.ts";

const valueKey = ({ what, read }: KeptValue) => JSON.stringify([what, read]);

/** Readings on top of those that a guard has, the latest day first; those of one day and one note are one set, each value once. */
export function withReadings(guard: Guard, added: KeptReadings, at: Date): Guard {
  const alike = guard.readings.filter(({ date, note }) => date === added.date && note === added.note);
  const known = new Set(alike.flatMap(({ values }) => values.map(valueKey)));
  const values = added.values.filter((value) => !known.has(valueKey(value)));
  if (values.length === 0) return guard;
  const old = alike.find((each) => each.values.length + values.length <= MAX_VALUES);
  const set = old ? { ...old, values: [...old.values, ...values] } : { ...added, values };
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
