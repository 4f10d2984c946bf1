import { readShown } from "../../bench/meter/shown.ts";
import type { Passport } from "../../bench/passport/passport.ts";
import { QuantityError } from "../../build-file/quantity.ts";
import { MAX_NAME_CHARS, MAX_NOTES_CHARS } from "../../limits.ts";
import { note, notedUnder } from "../bench/fitting/noted.ts";
import { freshId, h } from "../dom/element.ts";
import { type Details, heightOf } from "./details.ts";

export interface DetailFields {
  readonly element: HTMLElement;
  read(): Details;
}

interface Asked {
  readonly title: string;
  readonly pickups: readonly { readonly name: string; readonly words: string }[];
  readonly readings: Passport["readings"];
}

type Input = HTMLInputElement | HTMLTextAreaElement;

interface DetailField {
  readonly element: HTMLElement;
  /** What is written; empty where it cannot be read. */
  read(): string;
}

interface FieldSpec {
  readonly key: string;
  readonly label: string;
  readonly input: Input;
  /** @throws QuantityError where the text cannot be read */
  readonly check?: (text: string) => unknown;
}

function complaint(check: FieldSpec["check"], text: string): string {
  try {
    if (text !== "") check?.(text);
    return "";
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
}

/** A field that keeps what is written in it on this device. */
function detailField({ key, label, input, check }: FieldSpec, changed: () => void): DetailField {
  const id = freshId("detail");
  input.id = id;
  input.value = notedUnder(key);
  const fault = h("p", { class: "fault-text", id: `${id}-fault`, hidden: true });
  const judge = () => {
    const message = complaint(check, input.value.trim());
    fault.textContent = message;
    fault.hidden = message === "";
    input.toggleAttribute("aria-invalid", message !== "");
    return message === "";
  };
  input.addEventListener("input", () => {
    note(key, input.value.trim());
    judge();
    changed();
  });
  judge();
  return {
    element: h("div", { class: "field" }, h("label", { for: id }, label), input, fault),
    read: () => (judge() ? input.value.trim() : ""),
  };
}

const line = (more: Record<string, string | number> = {}) =>
  h("input", { type: "text", autocomplete: "off", maxlength: MAX_NAME_CHARS, ...more });

const short = () => line({ class: "short" });

function group(title: string, ...content: (HTMLElement | readonly HTMLElement[])[]): HTMLElement {
  return h("fieldset", { class: "detail-group" }, h("legend", {}, title), ...content);
}

const KEPT =
  "What you write is kept on this device under the guard's title: another guard of the same title shows it too, until one of them is given another title in its build file.";

/** What goes on the passport beside what the guard itself says. Readings and their date are those of the closing. */
export function createDetailFields({ title, pickups, readings }: Asked, changed: () => void): DetailFields {
  const make = (detail: string, spec: Omit<FieldSpec, "key">) =>
    detailField({ key: `${title}|${detail}`, ...spec }, changed);
  const guitar = make("guitar", { label: "Which guitar", input: line() });
  const date = make("date", { label: "Date", input: h("input", { type: "date" }) });
  const notes = make("notes", { label: "Notes", input: h("textarea", { rows: 3, maxlength: MAX_NOTES_CHARS }) });
  const shown = readings.map(({ label, where, should }) => ({
    label,
    field: make(label, { label: `${where} (${should})`, input: short(), check: readShown }),
  }));
  const ends = pickups.map(({ name, words }) => {
    const end = (which: string) =>
      make(`${name} ${which}`, { label: `${words}, ${which} end`, input: short(), check: heightOf });
    return { name, bass: end("bass"), treble: end("treble") };
  });
  return {
    element: h(
      "div",
      { class: "stack no-print" },
      h("p", { class: "hint" }, KEPT),
      h("div", { class: "field-row" }, guitar.element, date.element),
      group(
        "What the meter showed, tip to sleeve, dials at 10",
        shown.map(({ field }) => field.element),
      ),
      group(
        "Heights in mm, from string to pole, strings pressed at the last fret",
        ends.flatMap(({ bass, treble }) => [bass.element, treble.element]),
      ),
      notes.element,
    ),
    read: () => ({
      guitar: guitar.read(),
      date: date.read(),
      notes: notes.read(),
      noted: Object.fromEntries(shown.flatMap(({ label, field }) => (field.read() ? [[label, field.read()]] : []))),
      heights: Object.fromEntries(
        ends.map(({ name, bass, treble }) => [name, { bass: bass.read(), treble: treble.read() }]),
      ),
    }),
  };
}
