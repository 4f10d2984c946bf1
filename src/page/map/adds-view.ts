import { settingWords } from "../cells/cell-words.ts";
import { markSign } from "../cells/mark-sign.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { DrawnMap } from "./drawn-map.ts";

const MOST_NAMED = 8;

function which({ dots }: DrawnMap, cells: readonly number[]): string {
  const named = cells.slice(0, MOST_NAMED).map((cell) => settingWords(dots[cell]!.guard.reading, dots[cell]!.settings));
  const more = cells.length - named.length;
  return `${named.join("; ")}${more > 0 ? ` and ${more} more` : ""}`;
}

/** What each guard has that no other has. */
export function addsView(map: DrawnMap): HTMLElement {
  const rows = map.alike.added.map(({ guard, cells, of }) => [
    h("span", {}, markSign(guard), ` ${map.guards[guard]!.name}`),
    String(of),
    String(cells.length),
    cells.length === 0 ? "nothing: the others have all its sounds" : which(map, cells),
  ]);
  return plainTable("What each guard adds to the others", ["Guard", "Cells", "Of its own", "Which"], rows);
}
