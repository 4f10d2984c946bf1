import { showQuantity } from "../../build-file/show-quantity.ts";
import type { MeasureAnswer } from "../../contract/measure/measure.ts";
import { fittedView } from "../choice/fit-answer.ts";
import { createPutCoil, createPutIntoCoil } from "../choice/put-coil.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { setAt } from "../state/paths.ts";
import { signed } from "./signed.ts";

type Metal = Extract<MeasureAnswer, { method: "exciter" }>;

/** Three digits are more than any of it is known to. */
const rounded = (value: number) => Number(value.toPrecision(3));

function shieldingOf({ shielding }: Metal) {
  return shielding.map((metal) =>
    "pole" in metal ? { pole: rounded(metal.pole) } : { shelf: rounded(metal.shelf), depth: rounded(metal.depth) },
  );
}

const KINDS: Readonly<Record<string, string>> = {
  pole: "falls from",
  shelf: "middle of a step",
  depth: "the step's depth",
};

function lawTable({ values }: Metal): HTMLElement {
  if (values.length === 0) return h("p", {}, "No metal is heard: the slope is flat within what the recordings tell.");
  const rows = values.map(({ name, value, standardError }) => {
    const key = name.split(".").at(-1)!;
    const [best, error] =
      key === "depth"
        ? [`${signed(value, 2)} dB`, `${signed(standardError, 2)} dB`]
        : [showQuantity(value, "frequency"), showQuantity(standardError, "frequency", 2)];
    return [KINDS[key] ?? key, best, `± ${error}`];
  });
  return plainTable("What the metal does", ["Value", "Best", "Standard error"], rows);
}

const SHOWN_HZ = [200, 500, 1000, 2000, 3000, 4000, 6000, 8000, 10_000];

function slopeTable({ slope: { frequencies, decibels, errors }, systematic }: Metal): HTMLElement {
  const last = frequencies.at(-1) ?? 0;
  const rows = SHOWN_HZ.filter((hertz) => hertz <= last).map((hertz) => {
    const near = (i: number) => Math.abs(Math.log(frequencies[i]! / hertz));
    const at = frequencies.reduce((best, _, i) => (near(i) < near(best) ? i : best), 0);
    const besides = systematic.findLast(({ frequency }) => frequency <= hertz)?.decibels ?? 0;
    return [
      showQuantity(hertz, "frequency"),
      `${signed(decibels[at]!, 2)} dB`,
      `± ${signed(errors[at]!, 2)} dB`,
      besides === 0 ? "none" : `up to ${besides} dB`,
    ];
  });
  return plainTable(
    "The EMF, over that of a coil without metal",
    ["At", "Level", "Standard error", "Exciter besides"],
    rows,
  );
}

/** What metal takes of a pickup's EMF, and the button that gives it to a coil of the guard. */
export function metalView(answer: Metal, store: AppStore, editor: Editor): HTMLElement {
  const metal = shieldingOf(answer);
  const put = createPutIntoCoil(store, editor, "Give it this metal", (source, [pickup, coil]) =>
    setAt(source, ["parts", pickup, "coils", coil, "shielding"], metal),
  );
  return h(
    "div",
    { class: "stack" },
    lawTable(answer),
    slopeTable(answer),
    answer.notes.map((note) => h("p", { class: "hint" }, note)),
    put,
    answer.fit && fittedView(answer.fit, createPutCoil(store, editor, answer.fit)),
  );
}
