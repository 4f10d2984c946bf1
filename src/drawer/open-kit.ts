import type { DrawerInput } from "./drawer-schema.ts";

/** The drawer with one of a kit's boxes opened: its content lies there as parts, and the kit is one fewer. */
export function openKit(drawer: DrawerInput, index: number): DrawerInput {
  const kit = drawer.kits?.[index];
  if (!kit || (kit.count ?? 1) === 0) return drawer;
  const items = [...(drawer.items ?? [])];
  for (const { part, count = 1 } of kit.content) {
    const at = items.findIndex((item) => JSON.stringify(item.part) === JSON.stringify(part));
    if (at < 0) items.push({ part, count });
    else items[at] = { ...items[at]!, count: (items[at]!.count ?? 1) + count };
  }
  const kits = drawer.kits!.map((each, i) => (i === index ? { ...each, count: (each.count ?? 1) - 1 } : each));
  return { ...drawer, items, kits };
}
