import { createControlsPanel } from "./controls/controls-panel.ts";
import { createFaultList } from "./describe/fault-list.ts";
import { breath, idle } from "./dom/breath.ts";
import { h, replaceContent } from "./dom/element.ts";
import { createLazy, openWhenNear } from "./dom/lazy.ts";
import { createTabs } from "./dom/tabs.ts";
import { savesData } from "./dom/thrift.ts";
import { Engine } from "./engine/engine.ts";
import type { AudioRoom } from "./listen/audio-room.ts";
import type { Listening } from "./listen/listening.ts";
import { createSounding } from "./listen/sounding.ts";
import { createWaitBanner } from "./server/wait-banner.ts";
import { codeInAddress } from "./share/code-in-address.ts";
import { createShelfDoor } from "./shelf/shelf-door.ts";
import type { Bench } from "./start/bench.ts";
import { openFirst } from "./start/open-first.ts";
import { restoreDraft } from "./start/restore-draft.ts";
import { createStart } from "./start/start.ts";
import { createHeading } from "./start/title-field.ts";
import { listenForUndo } from "./start/undo-keys.ts";
import { type AppStore, createAppStore } from "./state/app-state.ts";
import { keepDraft } from "./state/draft-storage.ts";
import { Editor } from "./state/editor.ts";
import { keepView } from "./state/view-desk.ts";

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

function guardSection({ store, editor }: Bench): HTMLElement {
  const drawing = createLazy(async () => (await import("./drawing/guard-panel.ts")).createGuardPanel(store, editor));
  openWhenNear(drawing);
  return h(
    "section",
    { class: "panel guard-panel", "aria-labelledby": "guard-title" },
    h("h2", { id: "guard-title" }, "The wiring"),
    drawing.element,
  );
}

function detailTabs(bench: Bench, room: AudioRoom, listening: Listening): HTMLElement {
  const { store, editor } = bench;
  return createTabs("The guard in detail", [
    {
      id: "plan",
      title: "Plan",
      load: async () => (await import("./plan/plan-panel.ts")).createPlanPanel(bench),
    },
    {
      id: "parts",
      title: "Parts",
      load: async () => (await import("./describe/parts-panel.ts")).createPartsPanel(bench),
    },
    {
      id: "wires",
      title: "Wires",
      load: async () => (await import("./describe/wires-panel.ts")).createWiresPanel(store, editor),
    },
    {
      id: "hear",
      title: "Hear them all",
      load: async () => (await import("./listen/hear-panel.ts")).createHearPanel(bench, listening),
    },
    {
      id: "blind",
      title: "Blind test",
      load: async () => (await import("./blind/blind-panel.ts")).createBlindPanel(store, room, listening),
    },
    {
      id: "builds",
      title: "A against B",
      load: async () => (await import("./builds/builds-panel.ts")).createBuildsPanel(bench),
    },
    {
      id: "rewire",
      title: "Rewire",
      load: async () => (await import("./rewire/rewire-panel.ts")).createRewirePanel(store),
    },
    {
      id: "swap-card",
      title: "Swap card",
      load: async () => (await import("./swap-card/swap-card-panel.ts")).createSwapCardPanel(bench),
    },
    {
      id: "solder",
      title: "Solder",
      load: async () => (await import("./bench/solder-panel.ts")).createSolderPanel(store, editor),
    },
    {
      id: "measure",
      title: "Measure",
      load: async () => (await import("./bench/measure-panel.ts")).createMeasurePanel(bench),
    },
    {
      id: "choice",
      title: "Which part?",
      load: async () => (await import("./choice/choice-panel.ts")).createChoicePanel(store, editor),
    },
    {
      id: "wanted",
      title: "Sound wanted",
      load: async () => (await import("./wanted/wanted-panel.ts")).createWantedPanel(bench),
    },
    {
      id: "unknown",
      title: "What is it?",
      load: async () => (await import("./unknown/unknown-panel.ts")).createUnknownPanel(bench),
    },
    {
      id: "room",
      title: "Will it fit?",
      load: async () => (await import("./room/room-panel.ts")).createRoomPanel(store),
    },
    {
      id: "heights",
      title: "Heights",
      load: async () => (await import("./heights/heights-panel.ts")).createHeightsPanel(store),
    },
    {
      id: "passport",
      title: "Passport",
      load: async () => (await import("./passport/passport-panel.ts")).createPassportPanel(store),
    },
    {
      id: "send",
      title: "Send it",
      load: async () => (await import("./share/share-panel.ts")).createSharePanel(store),
    },
  ]);
}

/** What the address carries, else what was there before, else the first example. */
async function fillBench(bench: Bench): Promise<void> {
  const { store } = bench;
  const code = codeInAddress();
  if (code !== undefined) {
    const { openLink } = await import("./share/open-link.ts");
    if (await openLink(bench, code)) return;
  }
  // What takes the place of a link that cannot be opened would clear away why it could not.
  const { notice } = store.state;
  if (!(await restoreDraft(bench))) await openFirst(bench);
  if (notice) store.set({ notice });
}

/** The answer about what was put on the bench, so that the first screen is drawn once and whole. */
function firstView(store: AppStore): Promise<void> {
  return new Promise((resolve) => {
    const isThere = () => Boolean(store.state.view || !store.state.reading || store.state.notice);
    if (isThere()) return resolve();
    const stop = store.watchAny(
      (state) => [state.view, state.notice],
      () => {
        if (!isThere()) return;
        stop();
        resolve();
      },
    );
  });
}

/** Says of the page whether what it shows is yet to come up with what was asked for, or cannot. */
function tellWhetherBusy(store: AppStore, root: HTMLElement): void {
  const isBehind = ({ source, reading, settings, view, faults }: AppStore["state"]) =>
    faults.length === 0 && (source !== reading?.source || view?.reading !== reading || view?.settings !== settings);
  const isBusy = (state: AppStore["state"]) => state.opening > 0 || isBehind(state);
  store.watch(
    (state) => [isBusy(state)],
    (busy) => root.setAttribute("aria-busy", String(busy)),
  );
  store.watch(
    (state) => [state.faults.length > 0],
    (isUnreadable) => root.toggleAttribute("data-unreadable", isUnreadable),
  );
}

/** Whatever may come after the first screen, one thing at a time. */
async function settleIn(steps: readonly (() => unknown)[]): Promise<void> {
  for (const step of steps) {
    await idle();
    void step();
  }
}

async function stayOffline(): Promise<void> {
  (await import("./offline/keep-offline.ts")).keepOffline();
}

/**
 * Builds the page on what was there before, or on the first example. It comes with breaths between, the plot in a file of its
 * own, since one long stretch of work would keep a slow phone from answering; what is seen is put in place at once.
 */
export async function startPage(root: HTMLElement): Promise<void> {
  const store = createAppStore();
  const engine = new Engine();
  const bench = { store, engine, editor: new Editor(store, engine) };
  keepView(store, engine);
  // Before anything is asked of the service, as a link at once is.
  root.before(createWaitBanner());
  const filled = fillBench(bench)
    .then(() => firstView(store))
    .catch((error: Error) => store.set({ notice: error.message }));
  await breath();
  const { room, listening, playBar } = createSounding(store);
  await breath();
  const shelf = createShelfDoor(bench, { room, listening });
  const start = createStart(bench, shelf);
  await breath();
  const { createCurvesPanel } = await import("./curves/curves-panel.ts");
  const curves = createCurvesPanel(store);
  await filled;
  await breath();
  const controls = createControlsPanel(store, bench.editor);
  replaceContent(
    root,
    createHeading(store),
    start.element,
    shelf.section,
    createNotice(store),
    h(
      "div",
      { class: "top" },
      curves,
      h(
        "section",
        { class: "panel controls-section", "aria-labelledby": "controls-title" },
        h("h2", { id: "controls-title" }, "Controls"),
        controls,
        playBar.element,
      ),
    ),
    guardSection(bench),
    createFaultList(store),
    detailTabs(bench, room, listening),
  );
  tellWhetherBusy(store, root);
  listenForUndo(bench.editor);
  keepDraft(store);
  const ahead = [() => listening.keepReady(), () => engine.prepare(), shelf.loadAhead, stayOffline];
  void settleIn([start.fill, playBar.fill, ...(savesData() ? [] : ahead)]);
}
