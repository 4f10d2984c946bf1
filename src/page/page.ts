import { keepBench } from "./bench/bench-desk.ts";
import { createCautions } from "./bench/cautions.ts";
import { createMeasurePanel } from "./bench/measure-panel.ts";
import { createSolderPanel } from "./bench/solder-panel.ts";
import { createBlindPanel } from "./blind/blind-panel.ts";
import { createBuildsPanel } from "./builds/builds-panel.ts";
import { createChoicePanel } from "./choice/choice-panel.ts";
import { createControlsPanel } from "./controls/controls-panel.ts";
import { createCurvesPanel } from "./curves/curves-panel.ts";
import { createFaultList } from "./describe/fault-list.ts";
import { createPartsPanel } from "./describe/parts-panel.ts";
import { createWiresPanel } from "./describe/wires-panel.ts";
import { h, replaceContent } from "./dom/element.ts";
import { createTabs } from "./dom/tabs.ts";
import { createGuardPanel } from "./drawing/guard-panel.ts";
import { AudioRoom } from "./listen/audio-room.ts";
import { createHearPanel } from "./listen/hear-panel.ts";
import { Listening } from "./listen/listening.ts";
import { createPlayBar } from "./listen/play-bar.ts";
import { codeInAddress, openLink } from "./share/open-link.ts";
import { createSharePanel } from "./share/share-panel.ts";
import { createFileButtons } from "./start/file-buttons.ts";
import { restoreDraft } from "./start/restore-draft.ts";
import { createScenarioPicker, type ScenarioPicker } from "./start/scenario-picker.ts";
import { createStory } from "./start/story.ts";
import { createHeading, createTitleField } from "./start/title-field.ts";
import { listenForUndo } from "./start/undo-keys.ts";
import { type AppStore, createAppStore } from "./state/app-state.ts";
import { keepDraft } from "./state/draft-storage.ts";
import { Editor } from "./state/editor.ts";

function createNotice(store: AppStore): HTMLElement {
  const notice = h("p", { class: "notice", role: "status" });
  store.watch(
    (state) => [state.notice],
    (text) => {
      notice.textContent = text;
    },
  );
  return notice;
}

function controlsSection(store: AppStore, editor: Editor, listening: Listening): HTMLElement {
  return h(
    "section",
    { class: "panel controls-section", "aria-labelledby": "controls-title" },
    h("h2", { id: "controls-title" }, "Controls"),
    createControlsPanel(store, editor),
    createPlayBar(store, listening),
  );
}

/** What the address carries, else what was there before, else the first example. */
async function fillBench(store: AppStore, editor: Editor, picker: ScenarioPicker): Promise<void> {
  const code = codeInAddress();
  if (code !== undefined && (await openLink(store, editor, code))) return;
  // What takes the place of a link that cannot be opened would clear away why it could not.
  const { notice } = store.state;
  if (!restoreDraft(store, editor)) await picker.openFirst();
  if (notice) store.set({ notice });
}

/** Builds the page, and puts on the bench what was there before, or the first example. */
export function startPage(root: HTMLElement): void {
  const store = createAppStore();
  const editor = new Editor(store);
  const room = new AudioRoom(store);
  const listening = new Listening(store, room);
  const picker = createScenarioPicker(store, editor);
  replaceContent(
    root,
    createHeading(store),
    h("div", { class: "start" }, picker.element, createTitleField(store, editor), createFileButtons(store, editor)),
    createStory(store),
    createNotice(store),
    createCautions(true, "print-only"),
    h("div", { class: "top" }, createCurvesPanel(store), controlsSection(store, editor, listening)),
    createGuardPanel(store),
    createFaultList(store),
    createTabs("The guard in detail", [
      { id: "parts", title: "Parts", content: createPartsPanel(store, editor) },
      { id: "wires", title: "Wires", content: createWiresPanel(store, editor) },
      { id: "hear", title: "Hear them all", content: createHearPanel(store, editor, listening) },
      { id: "blind", title: "Blind test", content: createBlindPanel(store, room, listening) },
      { id: "builds", title: "A against B", content: createBuildsPanel(store, editor) },
      { id: "solder", title: "Solder", content: createSolderPanel(store) },
      { id: "measure", title: "Measure", content: createMeasurePanel(store) },
      { id: "choice", title: "Which part?", content: createChoicePanel(store, editor) },
      { id: "send", title: "Send it", content: createSharePanel(store) },
    ]),
  );
  listenForUndo(editor);
  keepBench(store);
  void fillBench(store, editor, picker).then(() => keepDraft(store));
}
