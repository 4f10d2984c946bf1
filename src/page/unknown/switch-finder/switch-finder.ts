import { BEEPER_CAUTIONS } from "../../../bench/switch-finder/cautions.ts";
import type { BeepTold } from "../../../bench/switch-finder/question.ts";
import type { SwitchAnswer } from "../../../contract/bench/switch-finder.ts";
import { benchEngineOf } from "../../bench/bench-desk.ts";
import { h, replaceContent } from "../../dom/element.ts";
import { latestOnly } from "../../dom/later.ts";
import { formText } from "../../fields/form-fields.ts";
import type { AppStore } from "../../state/app-state.ts";
import type { Editor } from "../../state/editor.ts";
import { type Finding, lugsInRows, questionOf, readPositions, readRows } from "./finding.ts";
import { foundView } from "./found-view.ts";
import { lugsPicture } from "./lugs-picture.ts";
import { heardList, positionsTable } from "./told-view.ts";
import { createTouchForm } from "./touch-form.ts";
import { createUseInGuard } from "./use-in-guard.ts";

function cautions(): HTMLElement {
  return h(
    "details",
    { class: "caution", open: true },
    h("summary", {}, h("b", {}, "Before you touch it with a meter")),
    h(
      "ul",
      {},
      BEEPER_CAUTIONS.map((text) => h("li", {}, text)),
    ),
  );
}

interface Steps {
  tell(told: BeepTold): void;
  undo(): void;
}

function stepView(finding: Finding, answer: SwitchAnswer, steps: Steps): HTMLElement {
  const { next, isKnown, text, joined } = answer;
  if (!next) return foundView(answer, steps.tell);
  return h(
    "div",
    { class: "stack" },
    createTouchForm({ between: next.between, positions: finding.positions, why: next.why }, (positions) =>
      steps.tell({ between: next.between, positions }),
    ),
    h("p", {}, isKnown && finding.beeps.length === 0 ? "" : text),
    finding.beeps.length > 0 && positionsTable("What is known so far", joined, "nothing yet"),
  );
}

/** Finds out with a beeper what an unknown switch does: which two lugs to touch, what that tells, what it is in the end. */
export function createSwitchFinder(store: AppStore, editor: Editor): HTMLElement {
  const engine = benchEngineOf(store);
  const rows = formText("lugs", "Lugs in each row, top first", "", "4, 4");
  const positions = formText("positions", "Positions of the handle", "", "5");
  const shown = h("div", { class: "switch-finding" });
  const latest = latestOnly();
  let finding: Finding | undefined;

  const steps: Steps = {
    tell: (told) => void go([...finding!.beeps, told]),
    undo: () => void go(finding!.beeps.slice(0, -1)),
  };
  const show = ({ lugs, beeps, answer }: Finding) => {
    if (!answer) return;
    const undo = h(
      "button",
      { type: "button", disabled: beeps.length === 0, onclick: steps.undo },
      "Undo the last touch",
    );
    replaceContent(
      shown,
      h(
        "div",
        { class: "found-frame", tabindex: 0, role: "group", "aria-label": "The lugs" },
        lugsPicture(lugs, answer.next?.between ?? []),
      ),
      h(
        "div",
        { class: "stack" },
        stepView(finding!, answer, steps),
        heardList(beeps, answer),
        h("div", { class: "buttons" }, undo),
        answer.done && createUseInGuard(store, editor, questionOf(finding!)),
      ),
    );
  };
  const go = async (beeps: readonly BeepTold[]) => {
    const isLatest = latest();
    finding = { ...finding!, beeps, answer: undefined };
    const answer = await engine.findSwitch(questionOf(finding));
    if (!isLatest()) return;
    const hadFocus = shown.contains(document.activeElement);
    finding = { ...finding, answer };
    show(finding);
    // Whoever works by keys goes on with the next two lugs.
    if (hadFocus) shown.querySelector<HTMLElement>(".touch-form input, .buttons button:enabled")?.focus();
  };
  const begin = (event: Event) => {
    event.preventDefault();
    const read = <Value>(field: typeof rows, parse: (text: string) => Value): Value | undefined => {
      field.showFault(undefined);
      try {
        return parse(field.read());
      } catch (error) {
        field.showFault((error as Error).message);
        return undefined;
      }
    };
    const [counts, count] = [read(rows, readRows), read(positions, readPositions)];
    if (!counts || !count) return;
    finding = { lugs: lugsInRows(counts), positions: count, beeps: [], answer: undefined };
    void go([]);
  };
  return h(
    "section",
    { class: "stack switch-finder" },
    h("h3", {}, "An unknown switch"),
    h(
      "p",
      {},
      "Find out with a meter that beeps what its lugs do: you are told which two to touch, and you say where it beeps. Hold the switch with its lugs towards you, as seen from the back of the guard.",
    ),
    cautions(),
    h(
      "form",
      { class: "stack", onsubmit: begin },
      h("div", { class: "field-row" }, rows.element, positions.element),
      h("div", { class: "buttons" }, h("button", { type: "submit", class: "primary" }, "Begin")),
    ),
    shown,
  );
}
