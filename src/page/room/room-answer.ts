import type { Clearance } from "../../bench/room/clearances/clearance.ts";
import type { Measures } from "../../bench/room/measures.ts";
import type { RoomTold } from "../../bench/room/room.ts";
import { capitalised } from "../../english.ts";
import { type Child, h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { roomPicture } from "./room-picture.ts";

type Words = ReadonlyMap<string, string>;

const inMm = (metres: number) => `${(metres * 1000).toFixed(1)} mm`;

const roomText = ({ clearance, tolerance }: Clearance) =>
  clearance === null ? "–" : `${inMm(clearance).replace("-", "−")} ± ${(tolerance * 1000).toFixed(1)}`;

function clearanceTable({ clearances }: RoomTold, words: Words): HTMLElement {
  const called = (name: string) => words.get(name) ?? name;
  return plainTable(
    "Room, the least first",
    ["Part", "What", "Against", "Room", "Verdict", "Why"],
    clearances.map((each): Child[] => [
      capitalised(called(each.part)),
      each.kind,
      called(each.against),
      h("span", { class: "room-number" }, roomText(each)),
      h("span", { class: `room-verdict ${each.verdict.replaceAll(" ", "-")}` }, each.verdict),
      each.message,
    ]),
  );
}

const list = (title: string, items: readonly Child[]): HTMLElement | false =>
  items.length > 0 &&
  h(
    "details",
    {},
    h("summary", {}, `${title} (${items.length})`),
    h(
      "ul",
      { class: "told" },
      items.map((item) => h("li", {}, item)),
    ),
  );

/** A picture of it, every clearance, and what is open. */
export function roomAnswer(measures: Measures, told: RoomTold, words: Words): HTMLElement {
  const called = (name: string) => capitalised(words.get(name) ?? name);
  return h(
    "div",
    { class: "stack" },
    h("div", { class: "room-frame" }, roomPicture(measures, told, words)),
    clearanceTable(told, words),
    list(
      "Still to be measured",
      told.asked.map(({ of, what, how }) => `${called(of)}, ${what}: ${how}.`),
    ),
    list(
      "Figures that were not measured",
      told.figures.map(({ part, what, source }) => `${called(part)}: ${what} (${source}).`),
    ),
  );
}
