import { showQuantity } from "../../build-file/show-quantity.ts";
import type { FoundAnswer, SearchAnswer } from "../../contract/search.ts";
import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { formChoice, formText } from "../fields/form-fields.ts";
import { createFormRun } from "../fields/form-run.ts";
import { postJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { setAt } from "../state/paths.ts";
import { createFreePicker, type SeriesChoice } from "./free-parts.ts";
import { createWishFields } from "./wish-fields.ts";

const DIMENSIONS = { farads: "capacitance", ohms: "resistance", metres: "length" } as const;

function valueText({ name, unit, value }: FoundAnswer["values"][number]): string {
  if (value === null) return `${name} left out`;
  return `${name} ${unit === "fraction" ? value : showQuantity(value, DIMENSIONS[unit])}`;
}

/** What a found choice changes where nothing was wished. */
function elsewhereView({ elsewhere }: FoundAnswer): HTMLElement | string {
  const heard = elsewhere.filter(({ audible }) => audible !== "none");
  if (heard.length === 0) return "nothing to be heard";
  const settings = heard.length === 1 ? "setting" : "settings";
  return h(
    "details",
    {},
    h("summary", {}, `heard in ${heard.length} ${settings}`),
    h(
      "ul",
      {},
      heard.map(({ label, verdict }) => h("li", {}, `${label}: ${verdict}`)),
    ),
  );
}

const FIELD_OF_UNIT = { farads: "capacitance", ohms: "resistance" } as const;

function put(editor: Editor, { values }: FoundAnswer): void {
  editor.edit((source) =>
    values.reduce((next, { name, unit, value }) => {
      if (value === null || !(name in next.parts) || (unit !== "farads" && unit !== "ohms")) return next;
      return setAt(
        next,
        ["parts", name, FIELD_OF_UNIT[unit]],
        showQuantity(value, DIMENSIONS[unit]).replace("Ω", "").replace(/\s/g, ""),
      );
    }, source),
  );
}

/** Costs this near to the best one's are as good: a hundredth of it, or of an octave, a decibel or a band of the ear. */
const TIE = 0.01;

/** Which of the found, best first, are as good as the best; none where only it is. */
export function tiesOf(best: readonly { readonly cost: number }[]): readonly boolean[] {
  const least = best[0]?.cost ?? 0;
  const ties = best.map(({ cost }) => cost - least <= TIE * Math.max(1, least));
  return ties.filter(Boolean).length > 1 ? ties : ties.map(() => false);
}

/** What to do where a wish means nothing in the setting on the bench, whatever the values. */
const UNMET: Readonly<Record<string, string>> = {
  peak: "In this setting no combination leaves a peak that could be moved: the response falls off without one. Turn the tone and the volume up to 10, or choose another position, and ask again.",
};
const UNMET_OTHERWISE =
  "In this setting no combination makes anything of the wish. Check that the position gives a signal and turn tone and volume up, then ask again.";

function answerOf(search: SearchAnswer, kind: unknown, store: AppStore, editor: Editor): HTMLElement {
  if (search.best.length === 0) return h("p", { class: "verdict" }, UNMET[String(kind)] ?? UNMET_OTHERWISE);
  const canPut = (found: FoundAnswer) =>
    found.values.every(
      ({ name, value }) => value !== null && store.state.source !== undefined && name in store.state.source.parts,
    );
  const ties = tiesOf(search.best);
  const rows = search.best.map((found, index) => [
    found.values.map(valueText).join(", "),
    ties[index] ? `${found.says} (a tie for the best)` : found.says,
    elsewhereView(found),
    canPut(found)
      ? h("button", { type: "button", class: "small", onclick: () => put(editor, found) }, "Put it in")
      : "",
  ]);
  return h(
    "div",
    { class: "stack" },
    h("p", {}, search.now ? `As it is: ${search.now.says}.` : "As it is, the wish means nothing for this guard."),
    plainTable(`The best of ${search.combinations} combinations`, ["Values", "Gives", "Elsewhere", ""], rows),
    h("p", { class: "hint" }, `${search.method}. Ranked by ${search.costMeaning}.`),
  );
}

/** Which value brings the wish nearest. */
export function createFindValue(store: AppStore, editor: Editor): HTMLElement {
  const wish = createWishFields();
  const picker = createFreePicker(store);
  const series = formChoice("free.series", "From the series", [
    { value: "usual", label: "as is customary" },
    { value: "E6", label: "E6 (10, 15, 22 …)" },
    { value: "E12", label: "E12" },
    { value: "E24", label: "E24" },
    { value: "drawer", label: "what is in the drawer" },
  ]);
  const from = formText("free.from", "from", "1n");
  const to = formText("free.to", "to", "100n");
  const drawer = formText("free.values", "In the drawer", "", "10n, 22n, 33n, 47n");
  const show = () => {
    const kind = series.read();
    for (const field of [from, to]) field.element.hidden = !kind.startsWith("E");
    drawer.element.hidden = kind !== "drawer";
  };
  series.element.addEventListener("change", show);
  show();
  const choices = (): SeriesChoice => {
    const kind = series.read();
    if (kind === "usual") return {};
    if (kind === "drawer")
      return {
        values: drawer
          .read()
          .split(/[\s,;]+/)
          .filter(Boolean),
      };
    return { series: kind, from: from.read(), to: to.read() };
  };
  const fields = [...wish.fields, series, from, to, drawer];
  const run = createFormRun(
    "Find the values",
    () => fields,
    async () => {
      const { reading } = store.state;
      if (!reading) return undefined;
      const free = picker.read(choices());
      if (free.length === 0) throw new Error("Tick at least one thing that may change.");
      const wished = wish.read(store.state);
      const search = await postJson("/api/search", { build: reading.source, free, wish: wished });
      return answerOf(search, wished.kind, store, editor);
    },
  );
  return h(
    "section",
    { class: "stack" },
    h("h3", {}, "Find a value"),
    h("p", { class: "hint" }, "Wishes are for the setting on the bench."),
    wish.element,
    picker.element,
    h("div", { class: "field-row" }, series.element, from.element, to.element, drawer.element),
    h("div", { class: "buttons" }, run.button),
    run.answer,
  );
}
