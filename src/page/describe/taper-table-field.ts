import { readTaperTable } from "../../build-file/tapers/read-table.ts";
import { freshId, h } from "../dom/element.ts";
import type { Commit, Field } from "../fields/field.ts";
import { getAt } from "../state/paths.ts";

const written = (value: unknown) =>
  Array.isArray(value)
    ? (value as [number, number][])
        .map(([turn, share]) => `${turn * 10}, ${Number((share * 100).toFixed(2))}`)
        .join("\n")
    : "";

/** A pot's own taper, typed or pasted as it was measured; an empty field takes the usual one again. */
export function taperTableField(name: string, commit: Commit): Field {
  const path = ["parts", name, "taper"];
  const id = freshId("taper");
  const area = h("textarea", { id, rows: 4, spellcheck: "false", placeholder: "0, 0\n5, 16\n10, 100" });
  const fault = h("p", { class: "fault-text", hidden: true });
  const tell = (message: string | undefined) => {
    fault.textContent = message ?? "";
    fault.hidden = message === undefined;
    area.toggleAttribute("aria-invalid", message !== undefined);
  };
  area.addEventListener("change", () => {
    try {
      commit(path, area.value.trim() === "" ? "audio" : readTaperTable(area.value));
      tell(undefined);
    } catch (error) {
      tell((error as Error).message);
    }
  });
  return {
    path: [...path, "table"],
    element: h(
      "div",
      { class: "field" },
      h("label", { for: id }, "Its taper as measured: dial, and % or ohms from lug 1 to 2"),
      area,
      fault,
    ),
    show: (source) => {
      if (document.activeElement !== area) area.value = written(getAt(source, path));
    },
    showFault: tell,
  };
}
