import type { Iron } from "../../bench/sheet/heat/iron.ts";
import { DEFAULT_SHEET_OPTIONS, SHEET_BOUNDS, type SheetOptions } from "../../bench/sheet/options.ts";
import type { Allowances } from "../../bench/sheet/wire/allowances.ts";
import type { Reel } from "../../bench/sheet/wire/reels.ts";
import type { KindsWanted } from "../../bench/sheet/wire/wire-kinds.ts";
import { WIRE_KIND_CHOICES } from "../describe/wire-kind-choices.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import { keepingFocus } from "../dom/keeping-focus.ts";
import type { AppStore } from "../state/app-state.ts";
import { keepSheetOptions, keptSheetOptions } from "./kept-options.ts";
import { createNumberSetting } from "./number-setting.ts";

const [SHORTEST, LONGEST] = SHEET_BOUNDS.allowance;
const MILLIMETRES = [SHORTEST * 1000, LONGEST * 1000] as const;

const LENGTHS: readonly (readonly [keyof Allowances, string])[] = [
  ["slack", "Slack on the guard, mm"],
  ["strip", "Bared at each end, mm"],
  ["jackLoop", "Service loop to the jack, mm"],
  ["clawLoop", "Service loop to the claw, mm"],
  ["foilLength", "Shortest wire to the foil, mm"],
];

const USES: readonly (readonly [keyof KindsWanted, string])[] = [
  ["hot", "Hot wires"],
  ["ground", "Ground wires"],
  ["jack", "To the jack's tip"],
];

function select<Value extends string>(
  label: string,
  options: readonly (readonly [Value, string])[],
  value: Value,
  take: (value: Value) => void,
): HTMLElement {
  const id = freshId("choice");
  const control = h(
    "select",
    { id },
    options.map(([each, words]) => h("option", { value: each, selected: each === value }, words)),
  );
  control.addEventListener("change", () => take(control.value as Value));
  return h("div", { class: "field" }, h("label", { for: id }, label), control);
}

/** One reel, with a way to take it off the list. */
function reelRow(reel: Reel, index: number, take: (reel: Reel) => void, drop: () => void): HTMLElement {
  const colour = h("input", {
    type: "text",
    value: reel.colour,
    maxlength: 30,
    class: "short",
    "aria-label": `Colour of reel ${index + 1}`,
    "data-reel": `colour ${index}`,
  });
  colour.addEventListener("change", () => {
    const written = colour.value.trim().toLowerCase();
    if (written !== "") take({ ...reel, colour: written });
  });
  const metres = h("input", {
    type: "number",
    min: 0,
    max: SHEET_BOUNDS.reelMetres,
    step: "any",
    value: reel.metres ?? "",
    class: "short",
    "aria-label": `Metres left on reel ${index + 1}`,
    "data-reel": `metres ${index}`,
  });
  metres.addEventListener("change", () => {
    const { metres: _, ...rest } = reel;
    const left = metres.valueAsNumber;
    take(left > 0 && left <= SHEET_BOUNDS.reelMetres ? { ...rest, metres: left } : rest);
  });
  return h(
    "li",
    { class: "row" },
    colour,
    select(`Kind of reel ${index + 1}`, WIRE_KIND_CHOICES, reel.kind, (kind) => take({ ...reel, kind })),
    h("label", { class: "inline" }, metres, " m left"),
    h(
      "button",
      { type: "button", onclick: drop, "aria-label": `Remove reel ${index + 1}`, "data-reel": `remove ${index}` },
      "Remove",
    ),
  );
}

function reelList(reels: readonly Reel[], set: (reels: readonly Reel[]) => void): HTMLElement {
  return h(
    "div",
    {},
    reels.length === 0 &&
      h("p", { class: "hint" }, "No reel named: the sheet takes black for ground and white for the rest."),
    h(
      "ul",
      { class: "plain" },
      reels.map((reel, index) =>
        reelRow(
          reel,
          index,
          (changed) => set(reels.with(index, changed)),
          () => set(reels.toSpliced(index, 1)),
        ),
      ),
    ),
    h(
      "button",
      {
        type: "button",
        "data-reel": "add",
        onclick: () => set([...reels, { colour: reels.length === 0 ? "black" : "white", kind: "plastic" }]),
      },
      "Add a reel",
    ),
  );
}

/** Wires, lengths and iron that a person has; the sheet follows every change. */
export function createSheetFields(store: AppStore): HTMLElement {
  const options = (): SheetOptions => ({ ...DEFAULT_SHEET_OPTIONS, ...store.state.benchOptions.sheet });
  const set = (changed: Partial<SheetOptions>) => {
    const { benchOptions } = store.state;
    const sheet = { ...options(), ...changed };
    store.set({ benchOptions: { ...benchOptions, sheet } });
    keepSheetOptions(sheet);
  };
  store.set({ benchOptions: { ...store.state.benchOptions, sheet: keptSheetOptions() } });
  const reels = h("div", {});
  store.watch(
    (state) => [state.benchOptions.sheet.reels],
    (own) => {
      const list = reelList(own ?? [], (changed) => set({ reels: changed }));
      keepingFocus(reels, "reel", () => replaceContent(reels, list));
    },
  );
  const { allowances, kinds, iron, maxEnds } = options();
  const setIron = (changed: Partial<Iron>) => set({ iron: { ...options().iron, ...changed } });
  /** The unit is what the label ends with. */
  const number = (
    label: string,
    value: number,
    [min, max]: readonly [number, number],
    take: (value: number) => void,
  ) => {
    const unit = label.includes(", ") ? label.split(", ").at(-1)! : "";
    return createNumberSetting({ name: "sheet", label, unit, value, min, max }, take);
  };
  return h(
    "details",
    { class: "no-print" },
    h("summary", {}, "My wire, lengths and iron"),
    h("h4", {}, "Reels that I have"),
    reels,
    h(
      "div",
      { class: "row add-row" },
      USES.map(([use, label]) =>
        select(label, WIRE_KIND_CHOICES, kinds[use], (kind) => set({ kinds: { ...options().kinds, [use]: kind } })),
      ),
    ),
    h("h4", {}, "Lengths"),
    h(
      "div",
      { class: "row add-row" },
      LENGTHS.map(([key, label]) =>
        number(label, allowances[key] * 1000, MILLIMETRES, (value) =>
          set({ allowances: { ...options().allowances, [key]: value / 1000 } }),
        ),
      ),
    ),
    h("h4", {}, "Iron and joints"),
    h(
      "div",
      { class: "row add-row" },
      number("Tip, °C", iron.celsius, SHEET_BOUNDS.celsius, (celsius) => setIron({ celsius })),
      number("Iron, watts", iron.watts, SHEET_BOUNDS.watts, (watts) => setIron({ watts })),
      select(
        "Solder",
        [
          ["leaded", "leaded"],
          ["lead-free", "lead-free"],
        ],
        iron.solder,
        (solder) => setIron({ solder }),
      ),
      number("Most ends a joint", maxEnds, SHEET_BOUNDS.maxEnds, (value) => set({ maxEnds: Math.round(value) })),
    ),
  );
}
