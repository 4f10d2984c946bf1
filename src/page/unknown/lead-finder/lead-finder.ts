import { LEAD_CAUTIONS } from "../../../bench/leads/cautions.ts";
import { benchEngineOf } from "../../bench/bench-desk.ts";
import { createCautions } from "../../bench/cautions.ts";
import { meterInUse } from "../../bench/meter/kept-meter.ts";
import { createMeterControl } from "../../bench/meter/meter-control.ts";
import { h, replaceContent } from "../../dom/element.ts";
import { later, latestOnly, whileShown } from "../../dom/later.ts";
import type { Bench } from "../../start/bench.ts";
import { Store } from "../../state/store.ts";
import { answerView } from "./answer-view.ts";
import { createIntoGuard, guardAsked } from "./into-guard.ts";
import { nextView } from "./next-view.ts";
import { FIRST_NOTES, type LeadNotes, NOTHING_MEASURED, requestOf } from "./notes.ts";
import { createOhmsFields } from "./ohms-fields.ts";
import { createSetupFields } from "./setup-fields.ts";
import { createCompass, createTaps } from "./taps.ts";

/** Long enough that a value being typed is not asked about letter by letter. */
const WAIT_MS = 250;

function cautions(): HTMLElement {
  return h(
    "div",
    { class: "caution" },
    h(
      "ul",
      {},
      LEAD_CAUTIONS.map((text) => h("li", {}, text)),
    ),
  );
}

/** Results of the pickup before would be taken for this one's where its leads have the same names. */
function anotherPickup(notes: Store<LeadNotes>): HTMLElement {
  const clear = () => notes.set(NOTHING_MEASURED);
  return h(
    "div",
    { class: "buttons" },
    h("button", { type: "button", onclick: clear }, "Another pickup: clear all that was measured"),
  );
}

/** Which lead of an unknown pickup is which, from what a meter, taps and a compass show. */
export function createLeadFinder(bench: Bench): HTMLElement {
  const { store } = bench;
  const notes = new Store<LeadNotes>(FIRST_NOTES);
  const next = h("div", { "aria-live": "polite" });
  const answer = h("div", {});
  const refusal = h("p", { class: "fault-text", role: "alert", hidden: true });
  const intoGuard = createIntoGuard(bench, notes);
  const element = h(
    "section",
    { class: "stack lead-finder", "aria-labelledby": "lead-finder-title" },
    h("h3", { id: "lead-finder-title" }, "Which lead is which?"),
    h(
      "p",
      {},
      "A pickup lies on the bench, and nobody knows its leads. Name them, measure what is asked for next, and see what each one is.",
    ),
    cautions(),
    createSetupFields(notes),
    createMeterControl(store),
    next,
    refusal,
    h(
      "details",
      { open: true },
      h("summary", {}, "All that was measured"),
      h(
        "div",
        { class: "stack" },
        createOhmsFields(notes),
        createTaps(notes),
        createCompass(notes),
        anotherPickup(notes),
      ),
    ),
    answer,
    intoGuard.element,
    createCautions(false),
  );
  const latest = latestOnly();
  const ask = async () => {
    const isLatest = latest();
    const request = requestOf(notes.state, meterInUse(store));
    if (!request) return;
    try {
      const told = await benchEngineOf(store).leads({ request, guard: guardAsked(notes.state, store.state.reading) });
      if (!isLatest()) return;
      refusal.hidden = true;
      const hadFocus = next.contains(document.activeElement);
      replaceContent(next, nextView(notes, told));
      if (hadFocus) next.querySelector<HTMLElement>("input, button")?.focus();
      replaceContent(answer, answerView(told));
      intoGuard.show(told);
    } catch (error) {
      if (!isLatest()) return;
      refusal.hidden = false;
      refusal.textContent = (error as Error).message;
    }
  };
  const whenShown = whileShown(element, ask);
  const soon = later(WAIT_MS, whenShown);
  notes.watchAny((state) => [state], soon);
  store.watchAny(({ reading, benchOptions }) => [reading, benchOptions.meter], soon);
  return element;
}
