import { createControlsPanel } from "./controls/controls-panel.ts";
import { createCurvesPanel } from "./curves/curves-panel.ts";
import { h, replaceContent } from "./dom/element.ts";
import { Listening } from "./listen/listening.ts";
import { createPlayBar } from "./listen/play-bar.ts";
import { createScenarioPicker, openScenario } from "./start/scenario-picker.ts";
import { createAppStore } from "./state/app-state.ts";
import { Editor } from "./state/editor.ts";

/** Builds the page and opens the first example. */
export function startPage(root: HTMLElement): void {
  const store = createAppStore();
  const editor = new Editor(store);
  const listening = new Listening(store);
  const notice = h("p", { class: "notice", role: "status" });
  store.watch(
    (state) => [state.notice],
    (text) => {
      notice.textContent = text;
    },
  );
  const picker = createScenarioPicker(store, editor);
  const title = h("p", { class: "build-title" });
  store.watch(
    (state) => [state.source],
    (source) => {
      title.textContent = source?.title ?? "";
    },
  );
  const controls = h(
    "section",
    { class: "panel", "aria-labelledby": "controls-title" },
    h("h2", { id: "controls-title" }, "Controls"),
    createControlsPanel(store, editor),
    createPlayBar(store, listening),
  );
  replaceContent(
    root,
    h("div", { class: "start" }, picker.element, title),
    notice,
    h("div", { class: "top" }, controls, createCurvesPanel(store)),
  );
  picker.ready
    .then((scenarios) => scenarios[0] && openScenario(store, editor, scenarios[0].id))
    .catch((error: Error) => store.set({ notice: error.message }));
}
