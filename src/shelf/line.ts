import type { Guard, GuardLine } from "./guard.ts";
import { partText } from "./part-text.ts";
import { spelled } from "./search.ts";

/** A short mark of a text by its length and a hash of its UTF-16 units in the manner of FNV-1a (32 bit, its offset and prime). */
export function markOf(text: string): string {
  let hash = 0x811c9dc5;
  for (let at = 0; at < text.length; at += 1) hash = Math.imul(hash ^ text.charCodeAt(at), 0x01000193);
  return `${text.length}-${(hash >>> 0).toString(16)}`;
}

/** What a list shows and a search knows of a guard. */
export function lineOf(guard: Guard): GuardLine {
  const { file, history: _, ...rest } = guard;
  const readings = guard.readings.flatMap(({ note, values }) => [note, ...values.map(({ what }) => what)]);
  const told = [guard.name, guard.guitar, guard.state, guard.made, guard.notes, ...readings, partText(file)];
  return { ...rest, fileMark: markOf(file), words: spelled(told.join(" ")) };
}
