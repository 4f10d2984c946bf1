import type { SwitchControl } from "../../build-file/lugs.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { partLabel, positionNames, switchLabel } from "../state/names.ts";
import type { Reading } from "../state/reading.ts";
import { createChoiceRow } from "./choice-row.ts";
import { createDial } from "./dial.ts";

interface Shown {
  readonly element: HTMLElement;
  readonly show: (value: never) => void;
}

/** What decides which controls there are; a change of values alone keeps the sliders, and with them the focus. */
function signature({ build, controls }: Reading): string {
  const switches = controls.switches.map((each) => [each.name, each.table.positions.length, switchLabel(build, each)]);
  return JSON.stringify([switches, controls.pots.map((name) => [name, partLabel(build, name)])]);
}

function switchRow({ build }: Reading, control: SwitchControl, editor: Editor): Shown {
  const words = positionNames(control);
  const choices = words.map((label, index) => ({ value: control.onShaft ? label : index + 1, label }));
  return createChoiceRow<string | number>(switchLabel(build, control), choices, (value) =>
    editor.turn(control.name, value),
  );
}

function createRows(reading: Reading, editor: Editor): Map<string, Shown> {
  const { build, controls } = reading;
  const ordered = [...controls.switches].sort((a, b) => Number(b === controls.main) - Number(a === controls.main));
  return new Map<string, Shown>([
    ...ordered.map((control): [string, Shown] => [control.name, switchRow(reading, control, editor)]),
    ...controls.pots.map((name): [string, Shown] => [
      name,
      createDial(partLabel(build, name), (value) => editor.turn(name, value)),
    ]),
  ]);
}

/** "Sounding: bridge + middle, parallel, in phase, hum cancelling." */
function soundingWords(label: string): string {
  if (label === "silent") return "Nothing reaches the jack.";
  return label.startsWith("nothing to hear") ? "There is nothing to hear yet: no pickup." : `Sounding: ${label}.`;
}

/** Position, tone, volume and push-pulls of the build on the bench. */
export function createControlsPanel(store: AppStore, editor: Editor): HTMLElement {
  const element = h("div", { class: "controls" });
  const words = h("p", { class: "sounding", role: "status" });
  let rows = new Map<string, Shown>();
  let shownSignature = "";
  store.watch(
    (state) => [state.reading, state.settings],
    (reading, settings) => {
      if (!reading) return;
      const next = signature(reading);
      if (next !== shownSignature) {
        shownSignature = next;
        rows = createRows(reading, editor);
        replaceContent(
          element,
          [...rows.values()].map((row) => row.element),
          words,
        );
      }
      for (const [name, row] of rows) row.show(settings[name] as never);
    },
  );
  store.watch(
    (state) => [state.view?.label],
    (label) => {
      words.textContent = label === undefined ? "" : soundingWords(label);
    },
  );
  return element;
}
