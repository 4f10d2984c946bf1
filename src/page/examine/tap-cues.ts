import type { TapPlanAnswer } from "../../contract/measure/taps.ts";
import { h } from "../dom/element.ts";

type Steps = TapPlanAnswer["steps"];

const called = ({ position, row }: Steps[number]) => `${position}, ${row}`;

/** What to tap now, and what next, while a take of taps is recorded. @param lead seconds before the first step */
export function createTapCues(lead: number) {
  const now = h("p", { class: "tap-cue", role: "status" });
  const next = h("p", { class: "hint" });
  const show = (steps: Steps, seconds: number) => {
    const current = steps.findLastIndex(({ at }) => lead + at <= seconds);
    const coming = steps[current + 1];
    const words = current < 0 ? "Get ready" : `Tap three times: ${called(steps[current]!)}`;
    // A status that is written again is said again.
    if (now.textContent !== words) now.textContent = words;
    const wait = coming ? Math.ceil(lead + coming.at - seconds) : 0;
    next.textContent = coming ? `In ${wait} s: ${called(coming)}` : "That was the last.";
  };
  return { element: h("div", { class: "stack" }, now, next), show };
}
