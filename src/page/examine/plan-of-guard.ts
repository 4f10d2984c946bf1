import { h, replaceContent } from "../dom/element.ts";
import { later, latestOnly } from "../dom/later.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";

/** Long enough that a value being typed is not asked about letter by letter. */
const WAIT_MS = 400;

/**
 * A place for what the service plans for the guard on the bench, asked anew whenever that changes.
 * @param ask the service, for a guard
 * @param show what there is to see of a plan
 */
export function createPlanOfGuard<Plan>(
  store: AppStore,
  ask: (source: Reading["source"]) => Promise<Plan>,
  show: (plan: Plan) => HTMLElement,
): { readonly element: HTMLElement; readonly plan: () => Plan | undefined } {
  const element = h("div", { class: "stack" });
  const latest = latestOnly();
  let plan: Plan | undefined;
  const fetchPlan = async () => {
    const { reading } = store.state;
    const isLatest = latest();
    if (!reading) return;
    try {
      const next = await ask(reading.source);
      if (!isLatest()) return;
      plan = next;
      replaceContent(element, show(next));
    } catch (error) {
      if (isLatest()) replaceContent(element, h("p", { class: "fault-text", role: "alert" }, (error as Error).message));
    }
  };
  const soon = later(WAIT_MS, fetchPlan);
  let asked: Reading | undefined;
  store.watch(
    (state) => [state.reading] as const,
    (reading) => {
      if (!reading || reading === asked) return;
      const isFirst = asked === undefined;
      asked = reading;
      plan = undefined;
      replaceContent(element, h("p", { class: "hint" }, "Working out what to record…"));
      if (isFirst) void fetchPlan();
      else soon();
    },
  );
  return { element, plan: () => plan };
}
