import type { KeptDrawer } from "./kept-drawer.ts";

function joined<Entry extends { readonly id: string }>(
  here: readonly Entry[],
  come: readonly Entry[],
): readonly Entry[] {
  const known = new Set(here.map(({ id }) => id));
  return [...here, ...come.filter(({ id }) => !known.has(id))];
}

/** A drawer with what another has besides; of an entry that both have, the first one's count and price stay. */
export function joinDrawers(here: KeptDrawer, come: KeptDrawer): KeptDrawer {
  return {
    ...here,
    currency: here.currency || come.currency,
    items: joined(here.items, come.items),
    kits: joined(here.kits, come.kits),
    wires: joined(here.wires, come.wires),
    counted: { ...come.counted, ...here.counted },
  };
}
