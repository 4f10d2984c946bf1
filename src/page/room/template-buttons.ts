import type { Measures } from "../../bench/room/measures.ts";
import { h } from "../dom/element.ts";
import { postForBytes } from "../server/client.ts";
import { fileStem, saveFile } from "../server/save-file.ts";
import type { Reading } from "../state/reading.ts";

const KINDS = { pdf: "application/pdf", svg: "image/svg+xml" } as const;
type Format = keyof typeof KINDS;

const HOW =
  "At 1:1, on A4 with pages to lay cross on cross where it is larger. Print at 100 %, not fitted to the page, and measure its 100 mm bar before you cut.";

/** Saves a drawing of the guard's holes over the cavities. @param asked what it is of, if there is anything */
export function templateButtons(
  asked: () => { readonly reading: Reading; readonly measures: Measures } | undefined,
): HTMLElement {
  const fault = h("p", { class: "fault-text", role: "alert" });
  const save = async (format: Format) => {
    fault.textContent = "";
    const of = asked();
    if (!of) return;
    try {
      const bytes = await postForBytes("/api/room/template", { build: of.reading.source, ...of.measures, format });
      saveFile(`${fileStem(of.reading.source.title)}-template.${format}`, new Blob([bytes], { type: KINDS[format] }));
    } catch (error) {
      fault.textContent = (error as Error).message;
    }
  };
  return h(
    "section",
    { class: "stack no-print", "aria-label": "The template" },
    h("p", { class: "hint" }, HOW),
    h(
      "div",
      { class: "buttons" },
      h("button", { type: "button", onclick: () => save("pdf") }, "Save template (PDF)"),
      h("button", { type: "button", onclick: () => save("svg") }, "Save template (SVG)"),
    ),
    fault,
  );
}
