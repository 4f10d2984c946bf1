import type { CapDifference } from "../../bench/dielectrics/cap-difference.ts";
import type { CapTold, DielectricRow } from "../../bench/dielectrics/told.ts";
import { shortQuantity } from "../../build-file/show-quantity.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import { h } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { plainTable } from "../dom/table.ts";
import type { Bench } from "../start/bench.ts";
import { setAt } from "../state/paths.ts";
import type { Reading } from "../state/reading.ts";

/** "0.3 dB: nobody hears this" in as few words as a table has room for. */
const HEARD: Readonly<Record<CapDifference["audible"], string>> = {
  none: "not heard",
  edge: "edge of hearing",
  "side-by-side": "side by side",
  plain: "plainly heard",
  "another-sound": "another sound",
};

const figure = ({ difference, audible }: CapDifference) => `${Math.abs(difference).toFixed(2)} dB, ${HEARD[audible]}`;

const percent = (fraction: number) =>
  `${fraction < 0 ? "−" : "+"}${Number((Math.abs(fraction) * 100).toPrecision(2))} %`;

/** Keeps the guard with such a cap in it as B, to be heard and compared. */
async function keepAsB({ store, engine }: Bench, { source }: Reading, cap: string, values: object): Promise<void> {
  const read = await engine.read(setAt(source, ["parts", cap], { ...source.parts[cap], ...values }));
  if ("reading" in read) store.set({ other: read.reading, family: "builds", heardBuild: "B" });
}

function rowCells(bench: Bench, reading: Reading, { cap, capacitance }: CapTold, row: DielectricRow) {
  const keep = (what: string, off: number) =>
    h(
      "button",
      {
        type: "button",
        class: "small",
        "aria-label": `Keep the guard with ${row.title}, ${what}, as B`,
        onclick: () =>
          void keepAsB(bench, reading, cap, {
            dielectric: row.dielectric,
            lossFactor: undefined,
            capacitance: shortQuantity(capacitance * (1 + off)),
          }),
      },
      "as B",
    );
  const { measured, marked, changed } = row;
  return [
    row.title,
    h("span", {}, `${figure(measured)} `, keep("the same value", 0)),
    h(
      "span",
      {},
      `${percent(marked.off)}: ${figure(marked)} `,
      keep(`${percent(marked.off)} off its mark`, marked.off),
    ),
    h("span", {}, `${percent(changed.off)}: ${figure(changed)}`),
  ];
}

/** The answer in a sentence, then in figures, each dielectric with a way to hear it. */
export async function dielectricAnswer(bench: Bench, reading: Reading, cap: string): Promise<HTMLElement> {
  bringStyle("tools.css");
  const { answer, caps, basis } = await benchEngineOf(bench.store).dielectrics(reading.build, [cap]);
  const [told] = caps as [CapTold];
  return h(
    "div",
    { class: "stack" },
    h("p", { class: "verdict" }, answer),
    h("p", {}, told.says),
    h(
      "div",
      { class: "dielectric-table" },
      plainTable(
        "Largest difference heard from a cap without loss",
        ["Made of", "At the same measured value", "As sold, at worst", "10 to 35 °C and 11 years, at worst"],
        told.rows.map((row) => rowCells(bench, reading, told, row)),
      ),
    ),
    h(
      "p",
      { class: "hint" },
      "The strings give every band of the ear the same here, and are heard through a guitar speaker. A guard kept as B is heard under “Hear them all” and compared under “A against B”.",
    ),
    h("p", { class: "hint" }, basis),
  );
}
