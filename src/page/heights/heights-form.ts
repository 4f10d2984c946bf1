import { mainPositions } from "../../bench/main-positions.ts";
import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import { partWords, pickupPlace } from "../../build-file/words/part-words.ts";
import type { HeightsAsked } from "../../contract/bench/heights.ts";
import { capitalised } from "../../english.ts";
import { h } from "../dom/element.ts";
import { type FormField, formChoice, formText } from "../fields/form-fields.ts";
import type { Reading } from "../state/reading.ts";
import { createHeightSet, type HeightSet } from "./height-set.ts";
import { createLevelRow, type LevelRow, type ReadRecording } from "./level-row.ts";
import { createPickupHeights, type PickupHeights } from "./pickup-heights.ts";

/** All that is asked about one guard's pickups and recordings. */
export interface HeightsForm {
  readonly element: HTMLElement;
  fields(): FormField[];
  read(): HeightsAsked;
}

const SETS = [
  ["now", "Levels at the heights as they are"],
  ["second", "Levels at a second height, some 1 to 1.5 mm lower"],
  ["third", "Levels at a third height"],
] as const;

const ORDERS = [
  { value: "low-to-high", label: "lowest string first" },
  { value: "high-to-low", label: "highest string first" },
] as const;
const MATTER = [
  { value: "both", label: "positions and strings" },
  { value: "positions", label: "positions alone" },
] as const;

/** Most people record two heights; a third is there for those who want to know how the law bends. */
function folded(content: HTMLElement): HTMLElement {
  return h("details", {}, h("summary", {}, "A third height, which shows how the law bends"), content);
}

/** The positions of a guard's main switch, by what they are called. */
function positionsOf({ controls }: Reading) {
  const { main } = controls;
  return mainPositions(controls).map((_, index) => ({
    label: main ? `Position ${index + 1}` : "As built",
    settings: main ? { [main.name]: index + 1 } : {},
  }));
}

function levelsOf(sets: readonly HeightSet[]): NonNullable<HeightsAsked["levels"]> {
  const filled = sets.flatMap(({ name, rows }) => rows.map((row) => ({ name, row, strings: row.read() })));
  let index = 0;
  for (const { row, strings } of filled) row.sentAs(strings ? index++ : -1);
  return filled.flatMap(({ name, row: { settings }, strings }) =>
    strings ? [{ ...(name === "now" ? {} : { heights: name }), settings, strings }] : [],
  );
}

function bodyOf(
  pickups: readonly PickupHeights[],
  sets: readonly HeightSet[],
): Pick<HeightsAsked, "pickups" | "heights" | "levels"> {
  const sent = pickups.flatMap((pickup) => {
    const read = pickup.read();
    return read ? [[pickup.name, read] as const] : [];
  });
  const lower = sets.filter(({ name }) => name !== "now").map((set) => [set.name, set.gaps()] as const);
  return { pickups: Object.fromEntries(sent), heights: Object.fromEntries(lower), levels: levelsOf(sets) };
}

export function createHeightsForm(reading: Reading, strings: number, readRecording: ReadRecording): HeightsForm {
  const words = partWords(reading.build.parts);
  const named = partsOfKind(reading.build, "pickup").map(([name]) => [name, capitalised(words.get(name)!)] as const);
  const pickups = named.map(([name, called]) => createPickupHeights(name, called));
  const placed = partsOfKind(reading.build, "pickup").map((part) => [part[0], capitalised(pickupPlace(part))] as const);
  const positions = positionsOf(reading);
  const order = formChoice("order", "In recordings", ORDERS);
  const rowsOf = (): LevelRow[] =>
    positions.map((position) => createLevelRow({ ...position, strings, order: () => order.read() }, readRecording));
  const sets = SETS.map(([name, title]) =>
    createHeightSet({ name, title, pickups: name === "now" ? [] : placed, rows: rowsOf() }),
  );
  const reference = formChoice("target.reference", "As loud as", [
    { value: "", label: "where the screws move least" },
    ...positions.map(({ label }, index) => ({ value: String(index), label: label.toLowerCase() })),
  ]);
  const matter = formChoice("target.matter", "To be equally loud", MATTER);
  const within = formText("target.within", "Within, dB", "1");
  const target = () => {
    const position = positions[reference.read() === "" ? -1 : Number(reference.read())];
    return {
      within: Number(within.read().replace(",", ".")),
      matter: matter.read(),
      ...(position ? { reference: position.settings } : {}),
    };
  };
  const goal = [reference, matter, within, order];
  return {
    element: h(
      "div",
      { class: "stack" },
      h("h4", {}, "The pickups as they stand"),
      pickups.map((pickup) => pickup.element),
      h("h4", {}, "What was recorded"),
      h(
        "div",
        { class: "field-row" },
        goal.map((field) => field.element),
      ),
      sets.map(({ element, name }) => (name === "third" ? folded(element) : element)),
    ),
    fields: () => [...pickups.flatMap((pickup) => pickup.fields), ...sets.flatMap((set) => set.fields()), ...goal],
    read: () => ({ ...bodyOf(pickups, sets), target: target() }),
  };
}
