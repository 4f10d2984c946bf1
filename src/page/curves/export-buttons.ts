import { h } from "../dom/element.ts";
import { fileStem, saveFile } from "../server/save-file.ts";
import type { AppStore } from "../state/app-state.ts";
import { plotColours } from "./colours.ts";
import { curveCsv } from "./curve-csv.ts";
import { curveSvg } from "./curve-svg.ts";
import type { Picture } from "./picture.ts";
import type { CurvePlot } from "./plot.ts";

/** The curves as a file: picture or table. */
export function createExportButtons(store: AppStore, plot: CurvePlot, picture: () => Picture | undefined): HTMLElement {
  const stem = () => `${fileStem(store.state.source?.title)}-curves`;
  const savePng = () =>
    plot.toCanvas()?.toBlob((blob) => {
      if (blob) saveFile(`${stem()}.png`, blob);
    });
  const saveText = (ending: string, type: string, make: (shown: Picture) => string) => () => {
    const shown = picture();
    if (shown) saveFile(`${stem()}.${ending}`, new Blob([make(shown)], { type }));
  };
  const toSvg = (shown: Picture) => curveSvg(shown, store.state.source?.title ?? "", plotColours());
  return h(
    "div",
    { class: "buttons export", role: "group", "aria-label": "Save the curves" },
    h("span", { class: "hint" }, "Save as"),
    h("button", { type: "button", class: "small", onclick: savePng }, "PNG"),
    h("button", { type: "button", class: "small", onclick: saveText("svg", "image/svg+xml", toSvg) }, "SVG"),
    h("button", { type: "button", class: "small", onclick: saveText("csv", "text/csv", curveCsv) }, "CSV"),
  );
}
