import type { DrawerInput } from "./drawer-schema.ts";

type Kept<Entry> = Entry & { readonly id: string };
export type KeptItem = Kept<NonNullable<DrawerInput["items"]>[number]>;
export type KeptKit = Kept<NonNullable<DrawerInput["kits"]>[number]>;
export type KeptReel = Kept<NonNullable<DrawerInput["wires"]>[number]>;

/** The drawer as the browser keeps it: every entry has an id, so that two tabs can write on different ones. */
export interface KeptDrawer {
  readonly id: "drawer";
  readonly currency: string;
  readonly items: readonly KeptItem[];
  readonly kits: readonly KeptKit[];
  readonly wires: readonly KeptReel[];
  /** Guards by id whose parts the person said are counted in the drawer or not; of others their state decides. */
  readonly counted: Readonly<Record<string, boolean>>;
}

export const EMPTY_DRAWER: KeptDrawer = { id: "drawer", currency: "", items: [], kits: [], wires: [], counted: {} };

function withoutId<Entry>({ id: _, ...entry }: Kept<Entry>) {
  return entry;
}

/** Whether there is nothing in it that somebody put there. */
export function isEmptyDrawer({ items, kits, wires }: KeptDrawer): boolean {
  return items.length + kits.length + wires.length === 0;
}

/** As the service and the worker read it. */
export function drawerInput({ currency, items, kits, wires }: KeptDrawer): DrawerInput {
  return {
    currency,
    items: items.map(withoutId),
    kits: kits.map(withoutId),
    wires: wires.map(withoutId),
  } as DrawerInput;
}

/** @param id a fresh one for each entry */
export function keptFrom(
  { currency = "", items = [], kits = [], wires = [] }: DrawerInput,
  id: () => string,
): KeptDrawer {
  const named = <Entry>(entries: readonly Entry[]) => entries.map((entry) => ({ ...entry, id: id() }));
  return { ...EMPTY_DRAWER, currency, items: named(items), kits: named(kits), wires: named(wires) } as KeptDrawer;
}
