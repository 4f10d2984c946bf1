import { type Child, h, replaceContent } from "../dom/element.ts";
import type { DrawerDesk } from "./drawer-desk.ts";
import { guardsTable } from "./guards-table.ts";
import { shoppingView } from "./shopping-view.ts";
import { TakeParts } from "./take-parts.ts";

/** Renews what is in a place, with the focus where it was. */
function renewed(place: HTMLElement, content: HTMLElement): void {
  const focused = place.contains(document.activeElement)
    ? document.activeElement!.closest("[aria-label]")?.getAttribute("aria-label")
    : undefined;
  replaceContent(place, content);
  if (!focused) return;
  const again = place.querySelector<HTMLElement>(`[aria-label="${CSS.escape(focused)}"]`);
  (again?.querySelector("input") ?? again)?.focus();
}

/** Guards against the drawer, and what is to be bought for those that are ticked. */
export function createAgainstSection(
  desk: DrawerDesk,
  say: (words: string) => void,
): { guards: Child; shopping: Child } {
  const guardsAt = h("div", {});
  const shoppingAt = h("div", { class: "stack" });
  const parts = new TakeParts(desk);
  const ticks = {
    take: (id: string, name: string) => void parts.take(id, name),
    count: (id: string, isCounted: boolean) =>
      void desk.edit((drawer) => ({ ...drawer, counted: { ...drawer.counted, [id]: isCounted } })),
    list: (id: string, isOnList: boolean) => desk.shopFor(id, isOnList),
  };
  desk.watch(({ drawer, guards, told }) => {
    if (!told) return;
    renewed(guardsAt, guardsTable(guards, told.guards, ticks));
    replaceContent(shoppingAt, shoppingView(told.shopping, drawer.currency, say));
  });
  return { guards: [guardsAt, parts.element], shopping: shoppingAt };
}
