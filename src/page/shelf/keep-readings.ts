import { MAX_LINE_CHARS } from "../../shelf/bounds.ts";
import type { KeptValue } from "../../shelf/guard.ts";
import { dayOf, newId } from "../../shelf/new-guard.ts";
import { withReadings } from "../../shelf/readings.ts";
import type { Bench } from "../start/bench.ts";
import { keepGuard } from "./keep-guard.ts";
import { openShelf } from "./open-shelf.ts";

const inLine = (text: string) => text.slice(0, MAX_LINE_CHARS);

/** Keeps what was measured on the guard on the bench with it, and the guard itself where it is not kept yet. @returns what to say */
export async function keepReadings(bench: Bench, measured: readonly KeptValue[]): Promise<string> {
  const values = measured.map(({ what, read }) => ({ what: inLine(what), read: inLine(read) }));
  const { id } = await keepGuard(bench);
  const at = new Date();
  const set = { id: newId(), date: dayOf(at), note: "", values };
  const { name } = await (await openShelf()).change(id, (guard) => withReadings(guard, set, at));
  return `${values.length === 1 ? "One reading is" : `${values.length} readings are`} kept with “${name}” on the shelf.`;
}
