import type { FreeRequest } from "../../contract/search.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";
import { partLabel } from "../state/names.ts";
import type { Reading } from "../state/reading.ts";

/** What may be said of a part's values beside its name. */
export type SeriesChoice = Pick<Extract<FreeRequest, { part: string }>, "values" | "series" | "from" | "to">;

interface FreeChoice {
  readonly key: string;
  readonly label: string;
  /** What the service is asked to vary; a series applies to parts that have one. */
  readonly toFree: (series: SeriesChoice) => FreeRequest;
}

function partChoices({ build }: Reading): FreeChoice[] {
  return Object.entries(build.parts).flatMap(([name, part]): FreeChoice[] => {
    if (part.kind !== "cap" && part.kind !== "resistor" && part.kind !== "pot") return [];
    const label = `${partLabel(build, name)} (${name})`;
    const own: FreeChoice = {
      key: name,
      label,
      toFree: (series) => ({ part: name, ...(part.kind === "pot" ? {} : series) }),
    };
    if (part.kind !== "pot" || part.role !== "volume") return [own];
    const bleed = { key: `bleed ${name}`, label: `a treble bleed across ${label}`, toFree: () => ({ bleed: name }) };
    return [own, bleed];
  });
}

const CABLE: FreeChoice = { key: "cable", label: "the cable's length", toFree: () => ({ cable: true }) };

export interface FreePicker {
  readonly element: HTMLElement;
  read(series: SeriesChoice): FreeRequest[];
}

/** Which parts may change. */
export function createFreePicker(store: AppStore): FreePicker {
  const list = h("div", { class: "check-list" });
  const legendId = freshId("free");
  let choices: { choice: FreeChoice; input: HTMLInputElement }[] = [];
  store.watch(
    (state) => [state.reading],
    (reading) => {
      if (!reading) return;
      const ticked = new Set(choices.filter(({ input }) => input.checked).map(({ choice }) => choice.key));
      choices = [...partChoices(reading), CABLE].map((choice) => ({
        choice,
        input: h("input", { type: "checkbox", checked: ticked.has(choice.key) }),
      }));
      replaceContent(
        list,
        choices.map(({ choice, input }) => h("label", { class: "on-off" }, input, h("span", {}, choice.label))),
      );
    },
  );
  return {
    element: h("fieldset", {}, h("legend", { id: legendId }, "What may change (up to six)"), list),
    read: (series) => choices.filter(({ input }) => input.checked).map(({ choice }) => choice.toFree(series)),
  };
}
