import type { SwitchControl } from "../../build-file/lugs.ts";
import { DIAL_MAX, type RawSettings } from "../../build-file/settings.ts";
import type { Cell, GuardOnHand } from "../cells/cell.ts";
import { cellOf } from "../cells/cell.ts";
import type { OnHand } from "../cells/guards-on-hand.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import type { Bench } from "../start/bench.ts";
import { keptAs } from "../state/kept-as.ts";
import { positionNames, switchLabel } from "../state/names.ts";
import type { Reading } from "../state/reading.ts";

export interface CellPicker {
  readonly element: HTMLElement;
  show(onHand: OnHand): void;
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

/** The guard on the bench as it is set there, by the name that it has among those on hand. */
function cellOnBench({ store }: Bench, all: readonly GuardOnHand[]): Cell | undefined {
  const { guard, settings } = store.state;
  const own = all.find(({ id }) => id === "bench") ?? all.find(({ id }) => id === keptAs(guard));
  return own && cellOf(own, settings);
}

/** Where cells are chosen for the board: a guard, its switches and its dials. @param take what to do with them */
export function createCellPicker(bench: Bench, take: (cells: readonly Cell[]) => void): CellPicker {
  const guards = choice("Guard", "guard", []);
  const controls = h("div", { class: "field-row" });
  let all: readonly GuardOnHand[] = [];
  let choices: readonly Choice[] = [];
  const guard = () => all.find(({ id }) => id === guards.select.value);
  const chosen = (): RawSettings => Object.fromEntries(choices.map(({ key, select }) => [key, Number(select.value)]));
  const one = h("button", { type: "button", class: "primary" }, "Put on the board");
  one.addEventListener("click", () => {
    const of = guard();
    if (of) take([cellOf(of, chosen())]);
  });
  const every = h("button", { type: "button" }, "Put every position on");
  every.addEventListener("click", () => {
    const of = guard();
    const main = of?.reading.controls.main;
    if (!of || !main) return;
    take(main.table.positions.map((_, index) => cellOf(of, { ...chosen(), [main.name]: index + 1 })));
  });
  const asSet = h("button", { type: "button" }, "Put on what is set on the bench");
  asSet.addEventListener("click", () => {
    const cell = cellOnBench(bench, all);
    if (cell) take([cell]);
  });
  const showControls = () => {
    const of = guard();
    choices = of ? choicesOf(of.reading) : [];
    replaceContent(
      controls,
      choices.map(({ element }) => element),
    );
    every.hidden = !of?.reading.controls.main;
  };
  guards.select.addEventListener("change", showControls);
  return {
    element: h("div", { class: "stack" }, guards.element, controls, h("div", { class: "buttons" }, one, every, asSet)),
    show: (onHand) => {
      const before = guard();
      all = onHand.guards;
      const { value } = guards.select;
      replaceContent(
        guards.select,
        all.map(({ id, name }) => h("option", { value: id }, name)),
      );
      if (all.some(({ id }) => id === value)) guards.select.value = value;
      if (guard()?.reading !== before?.reading || choices.length === 0) showControls();
    },
  };
}
