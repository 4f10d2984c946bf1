import { h, replaceContent } from "../dom/element.ts";
import type { Bench } from "../start/bench.ts";
import type { BuildSource } from "../state/reading.ts";

/** Beside a cap: whether it matters what it is made of. The answer's code comes with the first question. */
export function createDielectricQuestion(bench: Bench, cap: string) {
  let askedOf: BuildSource | undefined;
  const answer = h("div", { class: "stack dielectrics", "aria-live": "polite" });
  const button = h("button", { type: "button", class: "quiet" }, "Does the make matter?");
  button.addEventListener("click", async () => {
    const { reading } = bench.store.state;
    if (!reading) return;
    askedOf = reading.source;
    button.disabled = true;
    replaceContent(answer, h("p", { class: "hint" }, "Working…"));
    try {
      const { dielectricAnswer } = await import("./dielectric-answer.ts");
      replaceContent(answer, await dielectricAnswer(bench, reading, cap));
    } catch (error) {
      replaceContent(answer, h("p", { class: "fault-text", role: "alert" }, (error as Error).message));
    } finally {
      button.disabled = false;
    }
  });
  return {
    element: h("div", { class: "stack" }, h("div", { class: "buttons" }, button), answer),
    /** An answer goes with the guard that it is about. */
    show: (source: BuildSource) => {
      if (source !== askedOf) replaceContent(answer);
    },
  };
}
