import type { KeptDrawer, KeptItem } from "../../drawer/kept-drawer.ts";
import type { PartsTold } from "../engine/guard-parts-told.ts";

/** An item before parts were taken in and after; undefined where there was none. */
interface Change {
  readonly before: KeptItem | undefined;
  readonly after: KeptItem;
}

/** What taking parts in made of a drawer's items. */
export type Taken = readonly Change[];

/** Parts alike, and by its id the item that they go to; undefined or gone: a new one. */
export interface PartsFor extends Omit<PartsTold, "item"> {
  readonly item: string | undefined;
}

/** @param id a fresh one for each new item */
export function takeIn({ items }: KeptDrawer, parts: readonly PartsFor[], id: () => string): Taken {
  return parts.map(({ part, count, measured, item }): Change => {
    const before = items.find((each) => each.id === item);
    const known = before ?? ({ id: id(), part, count: 0 } as unknown as KeptItem);
    const values = [...(known.measured ?? []), ...measured];
    const after = {
      ...known,
      count: (known.count ?? 1) + count,
      ...(values.length > 0 ? { measured: values } : {}),
    };
    return { before, after };
  });
}

export function withTaken(drawer: KeptDrawer, taken: Taken): KeptDrawer {
  const changed = new Map(taken.map(({ after }) => [after.id, after]));
  const kept = drawer.items.map((item) => changed.get(item.id) ?? item);
  const known = new Set(drawer.items.map(({ id }) => id));
  const added = taken.flatMap(({ before, after }) => (before || known.has(after.id) ? [] : [after]));
  return { ...drawer, items: [...kept, ...added] };
}

/** The drawer without those parts; what was changed by hand since then stays as it is. */
export function withoutTaken(drawer: KeptDrawer, taken: Taken): KeptDrawer {
  const changes = new Map(taken.map((change) => [change.after.id, change]));
  const items = drawer.items.flatMap((item) => {
    const change = changes.get(item.id);
    if (!change || JSON.stringify(change.after) !== JSON.stringify(item)) return [item];
    return change.before ? [change.before] : [];
  });
  return { ...drawer, items };
}
