import { h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import { type Candidate, candidateText, fromBench, usualSecond } from "./candidate.ts";

export interface Slots {
  readonly element: HTMLElement;
  take(): readonly [Candidate | undefined, Candidate | undefined];
}

/** The two sides of a test: each is what is usual until the bench is taken for it. */
export function createSlots(store: AppStore): Slots {
  const chosen: [Candidate | undefined, Candidate | undefined] = [undefined, undefined];
  const take = () => [chosen[0] ?? fromBench(store.state), chosen[1] ?? usualSecond(store.state)] as const;
  const texts = [h("p", { class: "candidate" }), h("p", { class: "candidate" })] as const;
  const show = () => {
    const sides = take();
    // What each is called depends on the other, so that the names say what differs.
    for (const index of [0, 1] as const) {
      const candidate = sides[index];
      texts[index].textContent = candidate ? candidateText(candidate, sides[1 - index]) : "nothing yet";
    }
  };
  const slot = (index: 0 | 1) => {
    const button = h("button", { type: "button" }, "Take what is set now");
    button.addEventListener("click", () => {
      chosen[index] = fromBench(store.state);
      show();
    });
    return h("div", { class: "slot" }, h("h3", {}, index === 0 ? "A" : "B"), texts[index], button);
  };
  store.watchAny((state) => [state.reading, state.settings, state.other], show);
  return { element: h("div", { class: "slots" }, slot(0), slot(1)), take };
}
