import { h } from "../dom/element.ts";
import { createLazy } from "../dom/lazy.ts";
import type { Commit, Field } from "../fields/field.ts";
import type { Bench } from "../start/bench.ts";
import { partLabel } from "../state/names.ts";
import type { BuildSource, PartSource } from "../state/reading.ts";
import { createCoverToggle } from "./cover-toggle.ts";
import { createDielectricQuestion } from "./dielectric-question.ts";
import { fieldsOfPart } from "./part-fields.ts";
import { removePart } from "./remove-part.ts";
import { createTypePicker } from "./type-picker.ts";
import { KIND_WORDS } from "./words.ts";

export interface PartCard {
  readonly element: HTMLElement;
  readonly fields: readonly Field[];
  /** Where values stand that may be the catalogue's. */
  readonly marked: readonly Pick<Field, "path" | "element">[];
  show(source: BuildSource): void;
}

/** One part: what one changes most in sight, the rest behind "more". */
export function createPartCard(name: string, part: PartSource, bench: Bench, commit: Commit): PartCard {
  const { editor } = bench;
  const remove = h(
    "button",
    { type: "button", class: "quiet", onclick: () => editor.rework((before) => removePart(before, name)) },
    "Remove",
  );
  const { first, more } = fieldsOfPart(name, part, commit);
  const title = h("h3", {});
  const type = part.kind === "pickup" ? createTypePicker(name, editor) : undefined;
  const cover = part.kind === "pickup" ? createCoverToggle(name, bench.store, editor) : undefined;
  const fields = [...first, ...more];
  const question = part.kind === "cap" ? createDielectricQuestion(bench, name) : undefined;
  const body = HAS_BODIES.includes(part.kind) ? lazyBodies(name, commit) : undefined;
  const element = h(
    "article",
    { class: "part-card" },
    h("header", {}, title, h("span", { class: "kind" }, `${KIND_WORDS[part.kind] ?? part.kind} · ${name}`)),
    type?.element,
    first.length > 0 && h("div", { class: "field-row" }, first.map(elementOf)),
    question?.element,
    h(
      "details",
      {},
      h("summary", {}, "More"),
      body?.element,
      h("div", { class: "field-grid" }, more.map(elementOf)),
      cover?.element,
      remove,
    ),
  );
  element.querySelector("details")!.addEventListener("toggle", () => body?.open());
  return {
    element,
    fields,
    marked: type ? [type.typeField, ...fields] : fields,
    show: (source) => {
      title.textContent = partLabel(source as never, name);
      type?.show(source);
      body?.show(source);
      question?.show(source);
      cover?.show(source);
      for (const field of fields) field.show(source);
    },
  };
}

const HAS_BODIES = ["pot", "switch", "jack"];

/** The pictures of bodies are drawn once somebody looks for more. */
function lazyBodies(name: string, commit: Commit) {
  let latest: BuildSource | undefined;
  let shown: ((source: BuildSource) => void) | undefined;
  const element = h("div", {});
  const lazy = createLazy(async () => {
    const picker = (await import("./body-picker.ts")).createBodyPicker(name, commit);
    shown = picker.show;
    if (latest) picker.show(latest);
    return picker.element;
  });
  return {
    element,
    open: () => {
      if (!lazy.element.isConnected) element.append(lazy.element);
      lazy.open();
    },
    show: (source: BuildSource) => {
      latest = source;
      shown?.(source);
    },
  };
}

function elementOf(field: Field): HTMLElement {
  return field.element;
}
