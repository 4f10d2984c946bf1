import { type Child, h } from "./element.ts";

/** A table that scrolls sideways where the page is narrow. The first cell of each row is its heading. */
export function plainTable(caption: string, head: readonly string[], rows: readonly (readonly Child[])[]): HTMLElement {
  return h(
    "div",
    { class: "table-frame", tabindex: 0, role: "group", "aria-label": caption },
    h(
      "table",
      { class: "plain-table" },
      h("caption", {}, caption),
      h(
        "thead",
        {},
        h(
          "tr",
          {},
          head.map((text) => h("th", { scope: "col" }, text)),
        ),
      ),
      h(
        "tbody",
        {},
        rows.map(([first, ...rest]) =>
          h(
            "tr",
            {},
            h("th", { scope: "row" }, first),
            rest.map((cell) => h("td", {}, cell)),
          ),
        ),
      ),
    ),
  );
}
