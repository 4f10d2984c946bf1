import { benchEngineOf } from "../bench/bench-desk.ts";
import { createCautions } from "../bench/cautions.ts";
import { h, replaceContent } from "../dom/element.ts";
import { latestOnly, whileShown } from "../dom/later.ts";
import type { RewiringTold } from "../engine/rewire-told.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";
import { effortText, stepsView } from "./steps-view.ts";

const titleOf = ({ source }: Reading, otherwise: string) => source.title || otherwise;

function partsView(title: string, parts: readonly string[]): HTMLElement | false {
  const items = parts.map((text) => h("li", {}, text));
  return items.length > 0 && h("div", {}, h("h4", {}, title), h("ul", {}, items));
}

function homeView(sheet: string, { home }: RewiringTold): HTMLElement {
  const list = h("div", { hidden: true }, h("h3", {}, "The way home"), stepsView(`${sheet}, home`, home));
  const button = h("button", { type: "button", "aria-expanded": "false" }, "Show the way home");
  button.addEventListener("click", () => {
    list.hidden = !list.hidden;
    button.setAttribute("aria-expanded", String(!list.hidden));
    button.textContent = list.hidden ? "Show the way home" : "Hide the way home";
  });
  return h("div", { class: "stack" }, h("div", { class: "buttons no-print" }, button), list);
}

function keptView({ kept }: RewiringTold): HTMLElement {
  return h(
    "details",
    {},
    h("summary", {}, "What stays"),
    h(
      "ul",
      {},
      kept.map(({ from, to, means }) => h("li", {}, `${from} – ${to} (${means})`)),
    ),
  );
}

function rewiringView(found: Reading, wanted: Reading, told: RewiringTold): HTMLElement {
  const sheet = `${titleOf(found, "found")} to ${titleOf(wanted, "wanted")}`;
  if (told.steps.length === 0 && told.goOut.length === 0 && told.comeIn.length === 0)
    return h("p", {}, "Nothing is to be soldered: the guard as found has the nets of the guard as wanted.");
  return h(
    "div",
    { class: "stack" },
    h("p", {}, h("b", {}, effortText(told))),
    partsView("Goes out", told.goOut),
    partsView("Comes in", told.comeIn),
    stepsView(sheet, told.steps),
    keptView(told),
    homeView(sheet, told),
  );
}

/** From the guard kept as B, as found, to the guard on the bench, as wanted: the joints to open and to make, and the way home. */
export function createRewirePanel(store: AppStore): HTMLElement {
  const engine = benchEngineOf(store);
  const names = h("p", {});
  const list = h("div", { "aria-live": "polite" });
  const keep = h(
    "button",
    { type: "button", onclick: () => store.set({ other: store.state.reading }) },
    "Keep this guard as found",
  );
  const element = h(
    "div",
    { class: "stack" },
    h("h3", {}, "As found, as wanted"),
    createCautions(true),
    names,
    h("div", { class: "buttons no-print" }, keep),
    list,
  );
  const latest = latestOnly();
  const work = whileShown(element, async () => {
    const isLatest = latest();
    const { reading, other } = store.state;
    const told = reading && other && (await engine.rewire(other.build, reading.build));
    if (isLatest()) replaceContent(list, reading && other && told && rewiringView(other, reading, told));
  });
  store.watch(
    (state) => [state.reading, state.other],
    (wanted, found) => {
      names.textContent =
        wanted && found
          ? `As found: ${titleOf(found, "the guard kept as B")}. As wanted: ${titleOf(wanted, "the guard on the bench")}.`
          : "Put the guard on the bench as it is in the guitar and keep it as found; then change it into the guard that you want.";
      void work();
    },
  );
  return element;
}
