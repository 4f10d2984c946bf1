import { keepBench } from "../bench/bench-desk.ts";
import { createCautions } from "../bench/cautions.ts";
import { createChoiceRow } from "../controls/choice-row.ts";
import { h, replaceContent, s } from "../dom/element.ts";
import type { AppStore, View } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { createStaleNote } from "../state/stale-note.ts";
import { Store } from "../state/store.ts";
import { type LugSpeech, speechOf } from "../words/lug-speech.ts";
import { dialText } from "./bodies/part-words.ts";
import { findingsList } from "./findings-list.ts";
import { drawGuard, type GuardDrawing } from "./guard-drawing.ts";
import { wireByHand } from "./hand/wire-by-hand.ts";
import type { LivePath } from "./live-path.ts";
import { createTurnAdvice } from "./turn-advice.ts";
import type { Side } from "./view.ts";

interface PanelState {
  readonly side: Side;
}

const SAMPLES = [
  ["wire wire-live", "live, coil to jack"],
  ["wire wire-return", "its way back to ground"],
  ["wire wire-side", "joined to it"],
  ["wire wire-ground", "other ground"],
  ["wire wire-idle", "idle in this position"],
  ["wire wire-side wire-bus", "bare bus wire"],
] as const;

function legend(): HTMLElement {
  return h(
    "ul",
    { class: "legend" },
    SAMPLES.map(([cls, text]) =>
      h(
        "li",
        {},
        s(
          "svg",
          { viewBox: "0 0 44 12", width: 44, height: 12, "aria-hidden": "true" },
          s("path", { d: "M2 6H42", class: cls }),
        ),
        text,
      ),
    ),
  );
}

/** The way of every coil that sounds: a position that joins two pickups has two. */
function waysInWords({ description, inWords }: LivePath, speech: LugSpeech): HTMLElement[] {
  if (inWords.length === 0) return [h("p", {}, "Nothing reaches the jack in this setting.")];
  return [
    h("p", {}, h("b", {}, description.label), inWords.length > 1 && `, ${inWords.length} coils:`),
    h(
      "ul",
      {},
      inWords.map((way) => h("li", {}, speech.say(`${way.join(" → ")}.`))),
    ),
  ];
}

function sideRow(panel: Store<PanelState>): HTMLElement {
  const row = createChoiceRow<Side>(
    "Seen from",
    [
      { value: "back", label: "the back, as it is wired" },
      { value: "front", label: "the front" },
    ],
    (side) => panel.set({ side }),
  );
  panel.watch((state) => [state.side], row.show);
  return row.element;
}

const LUGS_COUNTED =
  "A pot's lug 1 is its counter-clockwise end (dial 0), 2 its wiper, 3 its clockwise end (dial 10). Seen from the back with the lugs down they read 3, 2, 1 from left to right; from the front, its mirror image, 1, 2, 3.";

/** Turns what the knobs of a drawing say; all else of it stays as it is while the signal's way does. */
function showDials(frame: HTMLElement, { reading, settings }: View): void {
  for (const text of frame.querySelectorAll<SVGTextElement>("[data-dial]")) {
    const { dial = "" } = text.dataset;
    const part = reading.build.parts[dial];
    const words = part?.kind === "pot" ? dialText(part, settings[dial]) : "";
    if (text.textContent !== words) text.textContent = words;
  }
}

function lightUp(frame: HTMLElement, net: number | undefined): void {
  for (const each of frame.querySelectorAll("[data-net]"))
    each.classList.toggle("lit", net !== undefined && each.getAttribute("data-net") === String(net));
}

/** The drawing of the guard with the live path of the setting, in which it is wired by hand, and what is wrong with the wiring. */
export function createGuardPanel(store: AppStore, editor: Editor): HTMLElement {
  const panel = new Store<PanelState>({ side: "back" });
  const frame = h("div", {
    class: "drawing-frame guard-frame",
    tabindex: 0,
    role: "group",
    "aria-label": "Drawing of the guard",
  });
  const way = h("div", { class: "way" });
  const found = h("div", { class: "found", "aria-live": "polite" });
  let drawing: GuardDrawing | undefined;
  const mark = () => drawing?.mark(store.state.bench?.audit ?? []);
  const byHand = wireByHand({ store, editor }, frame, () => drawing);
  const light = () => {
    const { chosen } = byHand.hand.state.state;
    const net = chosen?.kind === "lug" ? store.state.view?.path?.live.nets.get(chosen.name) : undefined;
    lightUp(frame, net);
  };
  const draw = () => {
    const { view } = store.state;
    if (!view?.path) return;
    const { reading, settings, path } = view;
    const input = { reading, settings, path, side: panel.state.side };
    const focusAgain = byHand.keptFocus();
    drawing = drawGuard(input);
    mark();
    replaceContent(frame, drawing.element);
    replaceContent(way, waysInWords(path, speechOf(reading)));
    byHand.drawn(drawing);
    light();
    focusAgain?.();
  };
  store.watchAny((state) => [state.view?.reading, state.view?.path?.shape], draw);
  store.watchAny((state) => [state.bench], mark);
  store.watchAny(
    (state) => [state.view],
    () => store.state.view?.path && showDials(frame, store.state.view),
  );
  panel.watchAny((state) => [state.side], draw);
  byHand.hand.state.watchAny((state) => [state.chosen], light);
  store.watch(
    (state) => [state.bench, state.benchFault],
    (bench, fault) =>
      replaceContent(
        found,
        bench
          ? findingsList(bench.audit, speechOf(store.state.benchOf!))
          : h("p", { class: "hint" }, fault ? `The wiring was not read: ${fault}` : "Reading the wiring…"),
      ),
  );
  store.set({ wantsPath: true });
  keepBench(store);
  return h(
    "div",
    { class: "stack" },
    createCautions(true, "print-only"),
    createStaleNote(store, "the drawing is"),
    h("div", { class: "row" }, sideRow(panel), legend()),
    h(
      "div",
      { class: "guard-columns" },
      h(
        "div",
        { class: "stack guard-main" },
        byHand.tools,
        h("p", { class: "hint scroll-hint" }, "The drawing is wider than the page: scroll it sideways."),
        frame,
      ),
      byHand.card,
      h(
        "div",
        { class: "stack guard-words" },
        h("p", { class: "hint" }, LUGS_COUNTED),
        way,
        createTurnAdvice(store, editor, () => drawing),
      ),
      found,
    ),
  );
}
