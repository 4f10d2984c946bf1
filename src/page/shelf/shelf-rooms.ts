import { bringStyle } from "../dom/style-sheet.ts";
import { createTabs } from "../dom/tabs.ts";
import { shelfCodeInAddress } from "../share/code-in-address.ts";
import type { Bench } from "../start/bench.ts";
import { createGuardsPanel } from "./guards-panel.ts";

/** What the shelf holds: the guards, and what is asked of several of them. @param leave closes it */
export async function createShelfRooms(bench: Bench, leave: () => void): Promise<HTMLElement> {
  bringStyle("shelf.css");
  const guards = await createGuardsPanel(bench, leave);
  const code = shelfCodeInAddress();
  if (code !== undefined) {
    const { offerLinked } = await import("./carry/offer-linked.ts");
    await offerLinked(guards, code);
  }
  return createTabs("What the shelf is asked", [
    { id: "guards", title: "Guards", load: async () => guards.element },
    {
      id: "drawer",
      title: "Drawer",
      load: async () => (await import("../drawer/drawer-panel.ts")).createDrawerPanel(bench, leave),
    },
  ]);
}
