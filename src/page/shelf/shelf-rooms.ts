import { createCellRooms, type Sounding } from "../cells/cell-rooms.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { createTabs } from "../dom/tabs.ts";
import { shelfCodeInAddress } from "../share/code-in-address.ts";
import type { Bench } from "../start/bench.ts";
import { createGuardsPanel } from "./guards-panel.ts";

/** What the shelf holds: the guards, and what is asked of several of them. @param leave closes it */
export async function createShelfRooms(bench: Bench, sounding: Sounding, leave: () => void): Promise<HTMLElement> {
  bringStyle("shelf.css");
  bringStyle("cells.css");
  const guards = await createGuardsPanel(bench, leave);
  const code = shelfCodeInAddress();
  if (code !== undefined) {
    const { offerLinked } = await import("./carry/offer-linked.ts");
    await offerLinked(guards, code);
  }
  const rooms = createCellRooms(bench, sounding);
  return createTabs("What the shelf is asked", [
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
  ]);
}
