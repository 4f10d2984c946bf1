import type { KeptDrawer } from "../../drawer/kept-drawer.ts";
import type { GuardState } from "../../shelf/guard.ts";
import { buildText } from "../../shelf/packed.ts";
import type { GuardAsked } from "../engine/drawer-answer.ts";
import { latestFirst } from "../shelf/latest-first.ts";
import { openShelf } from "../shelf/open-shelf.ts";
import type { Bench } from "../start/bench.ts";
import { keptAs } from "../state/kept-as.ts";
import type { DrawerGuard } from "./guards-table.ts";

const SOLDERED: readonly GuardState[] = ["wired", "in the guitar"];
const ON_BENCH = "bench";

/**
 * The guards of the shelf in the order of its list, after the one on the bench where it is none of them.
 * @param onList those that were ticked, or not, for the shopping list, by id
 */
export async function guardsBeside(
  { guard, reading }: Bench["store"]["state"],
  { counted }: KeptDrawer,
  onList: ReadonlyMap<string, boolean>,
): Promise<readonly DrawerGuard[]> {
  const onShelf = latestFirst(await (await openShelf()).getAll());
  const text = reading && buildText(reading.source);
  const isKept = onShelf.some(({ id, file }) => id === keptAs(guard) || file === text);
  const source = JSON.stringify(reading?.source);
  const bench = { id: ON_BENCH, name: "the guard on the bench", state: "on the bench" as const, file: source };
  return [...(reading && !isKept ? [bench] : []), ...onShelf].map(({ id, name, state, file }) => {
    const isSoldered = state !== "on the bench" && SOLDERED.includes(state);
    const isWanted = state === "wanted" || state === "on the bench";
    const isCounted = counted[id] ?? isSoldered;
    return { id, name, state, file, isCounted, isOnList: onList.get(id) ?? isWanted };
  });
}

export function asksOf(guards: readonly DrawerGuard[]): GuardAsked[] {
  return guards.map(({ name, file, isCounted, isOnList }) => ({ name, file, isSoldered: isCounted, isOnList }));
}
