import { MAX_LINE_CHARS, MAX_NOTES_CHARS } from "../../../shelf/bounds.ts";
import { GUARD_STATES, type Guard, type GuardContent } from "../../../shelf/guard.ts";
import { freshId, h } from "../../dom/element.ts";
import { later } from "../../dom/later.ts";

type Control = HTMLInputElement | HTMLSelectElement | HTMLTextAreaElement;

interface CardField {
  readonly element: HTMLElement;
  show(guard: Guard): void;
  /** Writes what was typed and is not written yet. */
  flush(): void;
}

/** Long enough that not every letter is written, short enough that a closed page loses none. */
const PAUSE_MS = 400;

/** @param seen what stood there when the person began to change it */
type Write = (patch: Partial<GuardContent>, seen: Partial<GuardContent>) => void;

function cardField(key: "name" | "guitar" | "state" | "made" | "notes", label: string, control: Control, write: Write) {
  const id = freshId("guard-field");
  control.id = id;
  let shown = "";
  let isDue = false;
  const flush = () => {
    if (!isDue) return;
    isDue = false;
    const seen = shown;
    // An empty or half-typed day stays as it was.
    if (key === "made" && control.value === "") return;
    shown = control.value;
    write({ [key]: control.value }, { [key]: seen });
  };
  const soon = later(PAUSE_MS, flush);
  control.addEventListener("input", () => {
    isDue = true;
    soon();
  });
  control.addEventListener("change", flush);
  const field: CardField = {
    element: h("div", { class: `field card-${key}` }, h("label", { for: id }, label), control),
    // What is being typed is not taken away.
    show: (guard) => {
      if (isDue) return;
      shown = guard[key];
      if (control.value !== shown) control.value = shown;
    },
    flush,
  };
  return field;
}

/** What is written on a guard: name, guitar, state, day and notes. */
export function createCardFields(write: Write): CardField {
  const name = h("input", { type: "text", maxlength: MAX_LINE_CHARS, autocomplete: "off" });
  const guitar = h("input", { type: "text", maxlength: MAX_LINE_CHARS, autocomplete: "off" });
  const made = h("input", { type: "date", max: "9999-12-31" });
  const notes = h("textarea", { rows: 4, maxlength: MAX_NOTES_CHARS });
  const state = h(
    "select",
    {},
    GUARD_STATES.map((value) => h("option", { value }, value)),
  );
  const fields = [
    cardField("name", "Name", name, write),
    cardField("guitar", "Guitar", guitar, write),
    cardField("state", "State", state, write),
    cardField("made", "Made", made, write),
    cardField("notes", "Notes", notes, write),
  ];
  return {
    element: h(
      "div",
      { class: "card-fields" },
      fields.map(({ element }) => element),
    ),
    show: (guard) => {
      for (const field of fields) field.show(guard);
    },
    flush: () => {
      for (const field of fields) field.flush();
    },
  };
}
