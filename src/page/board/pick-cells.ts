import type { SwitchControl } from "../../build-file/lugs.ts";
import { DIAL_MAX, type RawSettings } from "../../build-file/settings.ts";
import { type Cell, cellOf, type GuardName, type GuardOnHand } from "../cells/cell.ts";
import type { GuardsOnHand } from "../cells/guards-on-hand.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import { latestOnly } from "../dom/later.ts";
import type { AppStore } from "../state/app-state.ts";
import { positionNames, switchLabel } from "../state/names.ts";
import type { Reading } from "../state/reading.ts";

export interface CellPicker {
  readonly element: HTMLElement;
  show(names: readonly GuardName[]): void;
}

interface Choice {
  readonly element: HTMLElement;
  readonly key: string;
  readonly select: HTMLSelectElement;
}

function choice(label: string, key: string, options: readonly (readonly [value: string, text: string])[]): Choice {
  const id = freshId("pick");
  const select = h(
    "select",
    { id },
    options.map(([value, text]) => h("option", { value }, text)),
  );
  return { key, select, element: h("div", { class: "field" }, h("label", { for: id }, label), select) };
}

function switchChoice({ build }: Reading, control: SwitchControl): Choice {
  const names = positionNames(control).map((name, index) => [String(index + 1), name] as const);
  return choice(switchLabel(build, control), control.name, names);
}

const DIALS = Array.from({ length: DIAL_MAX + 1 }, (_, index) => String(DIAL_MAX - index)).map(
  (value) => [value, value] as const,
);

/** Every control that a cell is chosen by; dials of one role together. */
function choicesOf(reading: Reading): Choice[] {
  const { controls } = reading;
  const roles = (["tone", "volume"] as const).filter((role) => controls.potsWithRole(role).length > 0);
  return [
    ...controls.switches.map((control) => switchChoice(reading, control)),
    ...roles.map((role) => choice(role === "tone" ? "Tone" : "Volume", role, DIALS)),
  ];
}

export interface PickerActions {
  take(cells: readonly Cell[]): void;
  failed(error: unknown): void;
}

/** Where cells are chosen for the board: a guard, its switches and its dials. */
export function createCellPicker(store: AppStore, onHand: GuardsOnHand, { take, failed }: PickerActions): CellPicker {
  const guards = choice("Guard", "guard", []);
  const controls = h("div", { class: "field-row" });
  const latest = latestOnly();
  let names: readonly GuardName[] = [];
  let guard: GuardOnHand | undefined;
  let choices: readonly Choice[] = [];
  const chosen = (): RawSettings => Object.fromEntries(choices.map(({ key, select }) => [key, Number(select.value)]));
  const button = (text: string, act: () => void, kind = "") =>
    h("button", { type: "button", class: kind, onclick: act }, text);
  const one = button("Put on the board", () => guard && take([cellOf(guard, chosen())]), "primary");
  const every = button("Put every position on", () => {
    const main = guard?.reading.controls.main;
    if (!guard || !main) return;
    const of = guard;
    take(main.table.positions.map((_, index) => cellOf(of, { ...chosen(), [main.name]: index + 1 })));
  });
  const read = async (name: GuardName): Promise<GuardOnHand> => {
    const [found] = (await onHand.read([name])).guards;
    if (!found) throw new Error(`“${name.name}” cannot be read, and so not heard.`);
    return found;
  };
  const asSet = button("Put on what is set on the bench", () => {
    const own = onHand.onBench(names);
    const { settings } = store.state;
    if (own) read(own).then((found) => take([cellOf(found, settings)]), failed);
  });
  const showControls = () => {
    choices = guard ? choicesOf(guard.reading) : [];
    replaceContent(
      controls,
      choices.map(({ element }) => element),
    );
    for (const each of [one, every]) each.disabled = guard === undefined;
    every.hidden = guard !== undefined && !guard.reading.controls.main;
  };
  const choose = async () => {
    const isLatest = latest();
    const name = names.find(({ id }) => id === guards.select.value);
    for (const each of [one, every]) each.disabled = true;
    try {
      const found = name && (await read(name));
      if (!isLatest()) return;
      const isAnother = found?.reading !== guard?.reading;
      guard = found;
      if (isAnother) return showControls();
    } catch (error) {
      if (!isLatest()) return;
      guard = undefined;
      showControls();
      failed(error);
    }
    for (const each of [one, every]) each.disabled = guard === undefined;
  };
  guards.select.addEventListener("change", choose);
  return {
    element: h("div", { class: "stack" }, guards.element, controls, h("div", { class: "buttons" }, one, every, asSet)),
    show: (shown) => {
      names = shown;
      const { value } = guards.select;
      replaceContent(
        guards.select,
        names.map(({ id, name }) => h("option", { value: id }, name)),
      );
      if (names.some(({ id }) => id === value)) guards.select.value = value;
      void choose();
    },
  };
}
