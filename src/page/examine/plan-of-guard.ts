import { h, replaceContent } from "../dom/element.ts";
import { later, latestOnly, whileShown } from "../dom/later.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";

/** Long enough that a value being typed is not asked about letter by letter. */
const WAIT_MS = 400;
const CHANGED = new Error("The guard on the bench was changed meanwhile: begin again, with the guard as it is now.");

export interface PlanWanted<Plan> {
  /** What holds the place: nothing is asked while it is not seen. */
  readonly within: HTMLElement;
  /** The service, for a guard. */
  ask(source: Reading["source"]): Promise<Plan>;
  /** @returns what there is to see of a plan, if anything */
  show(plan: Plan): HTMLElement | false;
  /** Told at once of each change after the first. @param isOther whether another guard was opened */
  changed(isOther: boolean): void;
}

/** A place for what the service plans for the guard on the bench. */
export interface PlanOfGuard<Plan> {
  readonly element: HTMLElement;
  /** @throws where it is not worked out yet */
  plan(): Plan;
  /** Aborted, with why in words, once the guard is not the same any more. */
  until(): AbortSignal;
  /** An answer, or a refusal, about the guard as it is now. @throws why it is of no use, once the guard is not the same any more */
  during<Answer>(asked: Promise<Answer>): Promise<Answer>;
}

const aborted = (signal: AbortSignal) =>
  new Promise<never>((_, reject) => {
    signal.addEventListener("abort", () => reject(signal.reason), { once: true });
  });

/** The plan is asked for anew whenever the guard changes. */
export function createPlanOfGuard<Plan>(store: AppStore, wanted: PlanWanted<Plan>): PlanOfGuard<Plan> {
  const element = h("div", { class: "stack plan-of-guard" });
  const latest = latestOnly();
  let plan: Plan | undefined;
  let fetched: Reading | undefined;
  const fetchPlan = whileShown(wanted.within, async () => {
    const { reading } = store.state;
    // What waited to be seen may be seen before its time.
    if (!reading || reading === fetched) return;
    fetched = reading;
    const isLatest = latest();
    try {
      const next = await wanted.ask(reading.source);
      if (!isLatest()) return;
      plan = next;
      replaceContent(element, wanted.show(next));
    } catch (error) {
      if (!isLatest()) return;
      fetched = undefined;
      const again = h("button", { type: "button", onclick: () => fetchPlan() }, "Ask again");
      const message = h("p", { class: "fault-text", role: "alert" }, (error as Error).message);
      replaceContent(element, message, h("div", { class: "buttons" }, again));
    }
  });
  const soon = later(WAIT_MS, fetchPlan);
  let asked: Reading | undefined;
  let ofGuard: object | undefined;
  let until = new AbortController();
  const renew = (reading: Reading) => {
    const isFirst = asked === undefined;
    const isOther = store.state.guard !== ofGuard;
    asked = reading;
    ofGuard = store.state.guard;
    plan = fetched = undefined;
    // An answer under way is of the guard before.
    latest();
    replaceContent(element, h("p", { class: "hint" }, "Working out what to record…"));
    if (isFirst) return fetchPlan();
    until.abort(CHANGED);
    until = new AbortController();
    wanted.changed(isOther);
    soon();
  };
  store.watch(
    (state) => [state.reading] as const,
    (reading) => {
      if (reading && reading !== asked) renew(reading);
    },
  );
  return {
    element,
    plan: () => {
      if (plan === undefined) throw new Error("The plan is not there yet.");
      return plan;
    },
    until: () => until.signal,
    during: (asked) => Promise.race([asked, aborted(until.signal)]),
  };
}
