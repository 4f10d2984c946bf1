import type { DrawerInput } from "../../drawer/drawer-schema.ts";

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

const KEY = "presolderDrawer";

export function drawerFile(drawer: KeptDrawer): string {
  return `${JSON.stringify({ [KEY]: 1, drawer: drawerInput(drawer) }, null, 1)}\n`;
}

/** What stands in a drawer file; whether each part is one is for the reader of drawers. @throws Error where it is no such file */
export function fromDrawerFile(text: string): DrawerInput {
  let content: unknown;
  try {
    content = JSON.parse(text);
  } catch {
    content = undefined;
  }
  const { [KEY]: version, drawer } = (content ?? {}) as Record<string, unknown>;
  if (version !== 1 || typeof drawer !== "object" || drawer === null)
    throw new Error(`This is no drawer file as this page saves it (expected JSON that begins with {"${KEY}": 1).`);
  return drawer as DrawerInput;
}
