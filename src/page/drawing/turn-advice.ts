import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { partLabel } from "../state/names.ts";
import { speechOf } from "../words/lug-speech.ts";
import type { GuardDrawing } from "./guard-drawing.ts";
import { turnedTo } from "./hand/place-edits.ts";

/** Which pots to turn before soldering, each with a button that turns it in the drawing. */
export function createTurnAdvice(
  store: AppStore,
  editor: Editor,
  drawing: () => GuardDrawing | undefined,
): HTMLElement {
  const element = h("div", { class: "turn-advice" });
  const turnTo = (part: string, turn: number) => {
    const placed = drawing()?.placed.find(({ name }) => name === part);
    if (placed) void editor.edit((source) => turnedTo(source, placed, turn));
  };
  store.watch(
    (state) => [state.bench, state.benchOf],
    (bench, reading) => {
      if (!bench || !reading || bench.turns.length === 0) {
        replaceContent(element);
        return;
      }
      const speech = speechOf(reading);
      replaceContent(
        element,
        h("p", {}, h("b", {}, "Turn the pots before you solder"), ", as seen from the back:"),
        h(
          "ul",
          {},
          bench.turns.map(({ part, turn, clock, metresSaved, why }) =>
            h(
              "li",
              {},
              `${partLabel(reading.build, part)}: lugs to ${clock}, wires ${Math.round(metresSaved * 1000)} mm shorter.`,
              h("button", { type: "button", class: "no-print", onclick: () => turnTo(part, turn) }, "Turn it"),
              h("p", { class: "hint" }, speech.say(why)),
            ),
          ),
        ),
      );
    },
  );
  return element;
}
