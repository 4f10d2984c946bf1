import { h } from "../dom/element.ts";
import type { Bench } from "./bench.ts";
import { createFileButtons } from "./file-buttons.ts";
import { createScenarioPicker } from "./scenario-picker.ts";
import { createStartFold } from "./start-fold.ts";
import { createStory } from "./story.ts";
import { createTitleField } from "./title-field.ts";

/** What one starts from, names, saves and reads about; `fill` offers the guards once the first screen stands. */
export function createStart(bench: Bench): { readonly element: HTMLElement; fill(): Promise<void> } {
  const { store, editor } = bench;
  const picker = createScenarioPicker(bench);
  const fields = h(
    "div",
    { class: "start" },
    picker.element,
    createTitleField(store, editor),
    createFileButtons(bench),
  );
  return { element: createStartFold(store, fields, createStory(store)), fill: picker.fill };
}
