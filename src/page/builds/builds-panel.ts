import { summarize } from "../../build-file/setting-label.ts";
import { parseSettings, type RawSettings } from "../../build-file/settings.ts";
import { h, replaceContent } from "../dom/element.ts";
import { later, latestOnly, whileShown } from "../dom/later.ts";
import { plainTable } from "../dom/table.ts";
import type { LargestDifference } from "../engine/curve-difference.ts";
import type { Bench } from "../start/bench.ts";
import type { Reading } from "../state/reading.ts";
import { differenceText } from "./difference-words.ts";
import { differencesOf, whereInWords } from "./differences.ts";
import { createListeningVerdict } from "./listening-verdict.ts";

function partsTable(a: Reading, b: Reading): HTMLElement {
  const differences = differencesOf(a.source, b.source);
  if (differences.length === 0) return h("p", {}, "The two guards are the same, part by part and wire by wire.");
  const rows = differences.map((each) => [whereInWords(each, a, b), each.inA, each.inB]);
  return plainTable("What differs", ["Where", "A", "B"], rows);
}

function settingText(reading: Reading, settings: RawSettings): string {
  return summarize(reading.controls, parseSettings(reading.controls, settings)).label;
}

function curvesText(
  a: Reading,
  { here, overall }: { here: LargestDifference; overall: LargestDifference },
): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    h("p", {}, h("b", {}, "Curves at the jack, in this setting: "), `${differenceText(here)}.`),
    h(
      "p",
      {},
      h("b", {}, "Curves at the jack, over every position and tone: "),
      `${differenceText(overall)}, in ${settingText(a, overall.settings)}.`,
    ),
  );
}

function createKeepers({ store, editor }: Bench): HTMLElement {
  const keep = h("button", { type: "button" }, "Keep this guard as B");
  keep.addEventListener("click", () => store.set({ other: store.state.reading, family: "builds" }));
  const swap = h("button", { type: "button" }, "Swap A and B");
  swap.addEventListener("click", () => {
    const { reading, other } = store.state;
    if (!other) return;
    void editor.open(other.source, store.state.settings, other);
    store.set({ other: reading });
  });
  const drop = h(
    "button",
    { type: "button", class: "quiet", onclick: () => store.set({ other: undefined }) },
    "Drop B",
  );
  store.watch(
    (state) => [state.other],
    (other) => {
      swap.hidden = other === undefined;
      drop.hidden = other === undefined;
    },
  );
  return h("div", { class: "buttons" }, keep, swap, drop);
}

const SETTLED_MS = 150;

/** Two guards side by side: the one on the bench is A, the one kept aside is B. */
export function createBuildsPanel(bench: Bench): HTMLElement {
  const { store, engine } = bench;
  const names = h("p", {});
  const curves = h("div", {});
  const parts = h("div", {});
  const verdict = createListeningVerdict(store);
  store.watch(
    (state) => [state.reading, state.other],
    (a, b) => {
      verdict.element.hidden = b === undefined;
      if (!a || !b) {
        names.textContent = "Keep a guard as B, then change parts on the bench: the two are compared here.";
        replaceContent(parts);
        return;
      }
      names.textContent = `A: ${a.source.title || "on the bench"}. B: ${b.source.title || "kept aside"}.`;
      replaceContent(parts, partsTable(a, b));
    },
  );
  const element = h("div", { class: "stack" }, createKeepers(bench), names, verdict.element, curves, parts);
  const latest = latestOnly();
  const compare = whileShown(element, async () => {
    const isLatest = latest();
    const { reading, other, settings } = store.state;
    const differences = reading && other && (await engine.differences(reading, other, settings));
    if (!isLatest()) return;
    replaceContent(curves, reading && differences && curvesText(reading, differences));
  });
  // A whole set of curves twice: worth it when a knob has come to rest.
  store.watchAny((state) => [state.reading, state.other, state.settings], later(SETTLED_MS, compare));
  return element;
}
