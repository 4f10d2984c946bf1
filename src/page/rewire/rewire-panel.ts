import { benchEngineOf } from "../bench/bench-desk.ts";
import { createCautions } from "../bench/cautions.ts";
import { h, replaceContent } from "../dom/element.ts";
import { latestOnly, whileShown } from "../dom/later.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";
import { Store } from "../state/store.ts";
import { speechOf } from "../words/lug-speech.ts";
import { foundAndWanted } from "./guard-names.ts";
import { createRewiringSheet, type RewireView, type Rewiring } from "./rewiring-sheet.ts";
import { effortText } from "./steps-view.ts";

const titleOf = ({ source }: Reading, otherwise: string) => source.title || otherwise;

function partsView(title: string, parts: readonly string[]): HTMLElement | false {
  const items = parts.map((text) => h("li", {}, text));
  return items.length > 0 && h("div", {}, h("h4", {}, title), h("ul", { class: "told" }, items));
}

function homeView(rewiring: Rewiring, sheet: string, view: Store<RewireView>): HTMLElement {
  const way = h("div", { class: "stack", hidden: true }, h("h3", {}, "The way home"));
  const button = h("button", { type: "button", "aria-expanded": "false" }, "Show the way home");
  const draw = () => createRewiringSheet(rewiring, "home", `${sheet}, home`, view);
  button.addEventListener("click", () => {
    way.hidden = !way.hidden;
    if (way.childElementCount === 1) way.append(draw());
    button.setAttribute("aria-expanded", String(!way.hidden));
    button.textContent = way.hidden ? "Show the way home" : "Hide the way home";
  });
  return h("div", { class: "stack" }, h("div", { class: "buttons no-print" }, button), way);
}

function keptView({ wanted, told }: Rewiring): HTMLElement {
  const speech = speechOf(wanted);
  return h(
    "details",
    {},
    h("summary", {}, "What stays"),
    h(
      "ul",
      { class: "told" },
      told.kept.map(({ from, to, means }) => h("li", {}, speech.lug(from), " – ", speech.lug(to), ` (${means})`)),
    ),
  );
}

const NOTHING = "Nothing is to be soldered: the guard as found has the nets of the guard as wanted.";

function isNothing({ told: { steps, goOut, comeIn } }: Rewiring): boolean {
  return steps.length === 0 && goOut.length === 0 && comeIn.length === 0;
}

function rewiringView(rewiring: Rewiring, view: Store<RewireView>): HTMLElement {
  const { found, wanted, told } = rewiring;
  const sheet = `${titleOf(found, "found")} to ${titleOf(wanted, "wanted")}`;
  return h(
    "div",
    { class: "stack" },
    h("div", { class: "row" }, partsView("Goes out", told.goOut), partsView("Comes in", told.comeIn)),
    createRewiringSheet(rewiring, "there", sheet, view),
    keptView(rewiring),
    homeView(rewiring, sheet, view),
  );
}

/** From the guard kept as B, as found, to the guard on the bench, as wanted: the joints to open and to make, and the way home. */
export function createRewirePanel(store: AppStore): HTMLElement {
  const engine = benchEngineOf(store);
  const names = h("p", {});
  const effort = h("p", { role: "status" });
  const shown = h("div", {});
  let view = new Store<RewireView>({ shows: "both" });
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
    effort,
    shown,
  );
  const latest = latestOnly();
  const work = whileShown(element, async () => {
    const isLatest = latest();
    const { reading, other } = store.state;
    const told = reading && other && (await engine.rewire(other.build, reading.build));
    if (!isLatest()) return;
    const rewiring = told && { found: other, wanted: reading, told };
    // Those who watched it for the drawings before go with it.
    view = new Store({ ...view.state });
    replaceContent(effort, rewiring && (isNothing(rewiring) ? NOTHING : h("b", {}, effortText(rewiring.told))));
    replaceContent(shown, rewiring && !isNothing(rewiring) && rewiringView(rewiring, view));
  });
  store.watch(
    (state) => [state.reading, state.other],
    (wanted, found) => {
      names.textContent =
        wanted && found
          ? foundAndWanted(found, wanted)
          : "Put the guard on the bench as it is in the guitar and keep it as found; then change it into the guard that you want.";
      void work();
    },
  );
  return element;
}
