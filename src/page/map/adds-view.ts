import { markSign } from "../cells/mark-sign.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { type DrawnMap, namesOf } from "./drawn-map.ts";

/** What each guard has that no other has. */
export function addsView(map: DrawnMap): HTMLElement {
  const rows = map.alike.added.map(({ guard, cells, of }) => [
    h("span", {}, markSign(guard), ` ${map.guards[guard]!.name}`),
    String(of),
    String(cells.length),
    cells.length === 0 ? "nothing: the others have all its sounds" : namesOf(map, cells),
  ]);
  return plainTable("What each guard adds to the others", ["Guard", "Cells", "Of its own", "Which"], rows);
}
