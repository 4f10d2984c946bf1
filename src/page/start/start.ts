import { h } from "../dom/element.ts";
import type { ShelfDoor } from "../shelf/shelf-door.ts";
import type { Bench } from "./bench.ts";
import { createFileButtons } from "./file-buttons.ts";
import { createScenarioPicker } from "./scenario-picker.ts";
import { createStartFold } from "./start-fold.ts";
import { createStory } from "./story.ts";
import { createTitleField } from "./title-field.ts";

/** What one starts from, names, keeps and reads about; `fill` offers the guards once the first screen stands. */
export function createStart(
  bench: Bench,
  shelf: Omit<ShelfDoor, "section">,
): { readonly element: HTMLElement; fill(): Promise<void> } {
  const { store, editor } = bench;
  const picker = createScenarioPicker(bench);
  const fields = h(
    "div",
    { class: "start" },
    picker.element,
    createTitleField(store, editor),
    createFileButtons(bench, shelf),
  );
  return { element: createStartFold(store, fields, shelf.fault, createStory(store)), fill: picker.fill };
}
