import { turnWords } from "../../bench/heights/turn-words.ts";
import type { HeightsAnswer } from "../../contract/bench/heights.ts";
import { capitalised } from "../../english.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { screwPicture } from "./screw-picture.ts";

type Told = Omit<HeightsAnswer, "habits">;
type PickupTold = Told["pickups"][number];
type ScrewTold = PickupTold["screws"][number];

function signed(db: number | null): string {
  if (db === null) return "–";
  const size = Math.abs(db).toFixed(1);
  return `${size === "0.0" ? "" : db > 0 ? "+" : "−"}${size} dB`;
}

const millimetres = (metres: number) => (1000 * metres).toFixed(2);

function listOf(title: string, texts: readonly string[], className = "told"): HTMLElement | false {
  const items = texts.map((text) => h("li", {}, capitalised(text)));
  return items.length > 0 && h("div", {}, h("h4", {}, title), h("ul", { class: className }, items));
}

function bigTurn({ direction, turns, travel, clockwise }: ScrewTold): string {
  if (direction === "stays") return "stays";
  const size = turns === null ? `${millimetres(Math.abs(travel))} mm` : turnWords(turns);
  return `${capitalised(size)} ${direction}, ${clockwise ? "clockwise" : "counter-clockwise"}`;
}

function screwCard(screw: ScrewTold): HTMLElement {
  const { side, gapBefore, gapAfter, turnsError, turns } = screw;
  const sure = turnsError === null ? "" : ` (± ${turnsError.toFixed(2)} turns before rounding)`;
  const howTo = turns === null && screw.direction !== "stays" && screw.text.split(". ").slice(1).join(". ");
  return h(
    "div",
    { class: "screw-card" },
    h("b", { class: "screw-name" }, `${capitalised(side)} screw`),
    h("p", { class: "screw-turn" }, bigTurn(screw)),
    h("p", { class: "hint" }, `gap ${millimetres(gapBefore)} mm now, ${millimetres(gapAfter)} mm then${sure}`),
    howTo && h("p", { class: "hint" }, howTo),
  );
}

function pickupCard({ name, law, screws }: PickupTold, called: (name: string) => string): HTMLElement {
  return h(
    "section",
    { class: "pickup-turns", "aria-label": called(name) },
    h("h4", {}, capitalised(called(name))),
    screwPicture(called(name), screws),
    h("div", { class: "screw-cards" }, screws.map(screwCard)),
    h("p", { class: "hint" }, capitalised(law.text)),
  );
}

function positionsTable({ positions, basis }: Told): HTMLElement {
  const strings = positions[0]?.strings.map((_, index) => `String ${index + 1}`) ?? [];
  const isTold = basis === "recordings";
  const head = ["Position", "Level", "Off now", ...(isTold ? ["Off then"] : []), ...strings];
  const rows = positions.map(({ label, level, off, offAfter, errorAfter, strings: own }) => [
    capitalised(label),
    `${level.toFixed(1).replace("-", "−")} dB`,
    signed(off),
    ...(isTold ? [`${signed(offAfter)} ± ${(errorAfter ?? 0).toFixed(1)}`] : []),
    ...own.map((string) => (isTold ? `${signed(string.off)} → ${signed(string.offAfter)}` : signed(string.off))),
  ]);
  return plainTable(isTold ? "Before and after" : "As it stands", head, rows);
}

const BASIS: Readonly<Record<Told["basis"], string>> = {
  model: "The build file's own levels: no recordings yet, so no turns",
  "one height": "Recorded at one height: how far off, but not yet how far to turn",
  recordings: "From your recordings",
};

function verdict({ balanced, basis, precision }: Told): string {
  if (!balanced) return `${BASIS[basis]}.`;
  const fine = balanced.positions
    ? "All positions will be within the bound"
    : "Not all positions can be brought within the bound";
  const strings = balanced.strings ? ", and so will the strings." : "; not every string will.";
  return `${BASIS[basis]}, whose levels scatter by ${precision!.toFixed(2)} dB: ${fine.charAt(0).toLowerCase()}${fine.slice(1)}${strings}`;
}

/** @param called what a pickup is called, by its name in the build file */
export function heightsView(told: Told, called: (name: string) => string): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    h("p", {}, h("b", {}, verdict(told))),
    h(
      "div",
      { class: "pickup-turn-list" },
      told.pickups.map((pickup) => pickupCard(pickup, called)),
    ),
    listOf("Take care", told.warnings, "told warned"),
    listOf("What screws cannot do", told.left),
    told.positions.length > 0 && positionsTable(told),
    listOf("Next", told.next),
    listOf("Taken as usual", told.assumed),
  );
}
