import { createCellRooms, type Sounding } from "../cells/cell-rooms.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { createTabs, type Tab } from "../dom/tabs.ts";
import { shelfCodeInAddress } from "../share/code-in-address.ts";
import type { Bench } from "../start/bench.ts";
import { createGuardsPanel } from "./guards-panel.ts";
import { shelfWithStorage } from "./open-shelf.ts";

/** Has the list's style and the browser's database at hand before anybody asks for them. */
export async function prepareShelf(): Promise<void> {
  await Promise.all([bringStyle("shelf.css"), shelfWithStorage()]);
}

/** What the shelf holds: the guards, and what is asked of several of them. @param leave closes it */
export async function createShelfRooms(bench: Bench, sounding: Sounding, leave: () => void): Promise<HTMLElement> {
  // For the tabs that nobody has opened yet.
  void bringStyle("cells.css");
  const [guards] = await Promise.all([createGuardsPanel(bench, leave), prepareShelf()]);
  const code = shelfCodeInAddress();
  if (code !== undefined) {
    const { offerLinked } = await import("./carry/offer-linked.ts");
    await offerLinked(guards, code);
  }
  const rooms = createCellRooms(bench, sounding);
  const tabs: Tab[] = [
    { id: "guards", title: "Guards", load: async () => guards.element },
    {
      id: "board",
      title: "Listening board",
      load: async () => (await import("../board/board-panel.ts")).createBoardPanel(rooms),
    },
    {
      id: "map",
      title: "Map of sounds",
      load: async () => (await import("../map/map-panel.ts")).createMapPanel(rooms),
    },
    {
      id: "drawer",
      title: "Drawer",
      load: async () => (await import("../drawer/drawer-panel.ts")).createDrawerPanel(bench, leave),
    },
  ];
  return createTabs("What the shelf is asked", tabs, true);
}
