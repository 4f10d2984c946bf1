import { type Child, h } from "./element.ts";

/** So many letters are more than half a phone's width takes in two lines. */
const WIDE = 40;

/** Columns with texts that want a phone's whole width. */
function wideColumns(rows: readonly (readonly Child[])[]): ReadonlySet<number> {
  const isLong = (cell: Child) => typeof cell === "string" && cell.length > WIDE;
  return new Set(rows.flatMap((row) => row.flatMap((cell, column) => (isLong(cell) ? [column] : []))));
}

/**
 * A table whose rows become cards on a phone, each value under the name of its column. The first cell of each row is its heading.
 * Roles are said in so many words, since a table that is laid out otherwise is none to some browsers.
 */
export function plainTable(caption: string, head: readonly string[], rows: readonly (readonly Child[])[]): HTMLElement {
  const wide = wideColumns(rows);
  return h(
    "div",
    { class: "table-frame", tabindex: 0, role: "group", "aria-label": caption },
    h(
      "table",
      { class: "plain-table", role: "table" },
      h("caption", {}, caption),
      h(
        "thead",
        { role: "rowgroup" },
        h(
          "tr",
          { role: "row" },
          head.map((text) => h("th", { scope: "col", role: "columnheader" }, text)),
        ),
      ),
      h(
        "tbody",
        { role: "rowgroup" },
        rows.map(([first, ...rest]) =>
          h(
            "tr",
            { role: "row" },
            h("th", { scope: "row", role: "rowheader" }, first),
            rest.map((cell, index) =>
              h(
                "td",
                { role: "cell", "data-column": head[index + 1], class: wide.has(index + 1) ? "wide" : undefined },
                cell,
              ),
            ),
          ),
        ),
      ),
    ),
  );
}
