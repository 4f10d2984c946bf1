import type { TableRowAnswer } from "../../contract/table.ts";
import { showDb, showHum, showHz } from "../curves/units.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { createFormRun } from "../fields/form-run.ts";
import { askedSignal } from "../listen/asked-signal.ts";
import { postForBytes, postJson } from "../server/client.ts";
import { fileStem, saveFile } from "../server/save-file.ts";
import type { AppStore } from "../state/app-state.ts";

const orDash = <T>(value: T | null, show: (value: T) => string) => (value === null ? "–" : show(value));

function cells({ label, peak, cutoff, level, loudness, hum }: TableRowAnswer): string[] {
  return [
    label,
    orDash(peak, ({ frequency }) => showHz(frequency)),
    orDash(peak, ({ level: height }) => showDb(height)),
    orDash(cutoff, showHz),
    showDb(level),
    orDash(loudness, (value) => showDb(value).replace("dB", "LU")),
    showHum(hum),
  ];
}

const HEAD = ["Setting", "Peak", "Height", "Cutoff", "Level at 200 Hz", "Loudness", "Hum"];

/** Peak, cutoff, level, loudness and hum of the whole set. */
export function createEverythingTable(store: AppStore): HTMLElement {
  const body = () => ({ build: store.state.reading?.source, ...askedSignal(store.state) });
  const show = createFormRun(
    "Show the table",
    () => [],
    async () => {
      const { rows } = await postJson("/api/table", body());
      return plainTable("Every position and tone", HEAD, rows.map(cells));
    },
  );
  const save = h("button", { type: "button" }, "Save as CSV");
  save.addEventListener("click", async () => {
    try {
      const csv = await postForBytes("/api/table", { ...body(), format: "csv" });
      saveFile(`${fileStem(store.state.source?.title)}-settings.csv`, new Blob([csv], { type: "text/csv" }));
    } catch (error) {
      store.set({ notice: (error as Error).message });
    }
  });
  show.button.classList.remove("primary");
  return h(
    "section",
    { class: "stack" },
    h("h3", {}, "All settings in figures"),
    h("div", { class: "buttons" }, show.button, save),
    show.answer,
  );
}
