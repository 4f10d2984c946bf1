import { MAX_LINE_CHARS } from "../../../shelf/bounds.ts";
import type { Guard, KeptReadings } from "../../../shelf/guard.ts";
import { dayOf, newId } from "../../../shelf/new-guard.ts";
import { freshId, h, replaceContent } from "../../dom/element.ts";
import { plainTable } from "../../dom/table.ts";

interface ReadingActions {
  add(readings: KeptReadings): void;
  remove(id: string): void;
}

function setView({ id, date, note, values }: KeptReadings, { remove }: ReadingActions): HTMLElement {
  const title = [date, note].filter(Boolean).join(": ");
  const rows = values.map(({ what, read }) => [what, read]);
  return h(
    "div",
    { class: "stack" },
    plainTable(title, ["What", "Read"], rows),
    h("div", { class: "buttons" }, [
      h(
        "button",
        { type: "button", class: "quiet", "aria-label": `Delete these readings, ${title}`, onclick: () => remove(id) },
        "Delete these readings",
      ),
    ]),
  );
}

function field(label: string, control: HTMLInputElement): HTMLElement {
  control.id = freshId("reading");
  return h("div", { class: "field" }, h("label", { for: control.id }, label), control);
}

function addForm({ add }: ReadingActions): HTMLFormElement {
  const text = () => h("input", { type: "text", maxlength: MAX_LINE_CHARS, autocomplete: "off" });
  const [what, read, note] = [text(), text(), text()];
  const date = h("input", { type: "date", value: dayOf(new Date()), max: "9999-12-31" });
  const form = h(
    "form",
    { class: "reading-form" },
    field("What was measured", what),
    field("It read", read),
    field("On", date),
    field("Note", note),
    h("button", { type: "submit" }, "Add this reading"),
  );
  what.required = true;
  read.required = true;
  date.required = true;
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const value = { what: what.value.trim(), read: read.value.trim() };
    add({ id: newId(), date: date.value, note: note.value.trim(), values: [value] });
    what.value = "";
    read.value = "";
    what.focus();
  });
  return form;
}

/** What was measured on a guard, by day, and room for more. */
export function createReadingsView(actions: ReadingActions): { element: HTMLElement; show(guard: Guard): void } {
  const sets = h("div", { class: "stack" });
  let shown: Guard["readings"] | undefined;
  return {
    element: h("section", { class: "stack" }, h("h4", {}, "Readings"), sets, addForm(actions)),
    show: ({ readings }) => {
      if (JSON.stringify(readings) === JSON.stringify(shown)) return;
      shown = readings;
      replaceContent(
        sets,
        readings.length === 0 &&
          h("p", { class: "hint" }, "None yet. Those of the Measure tab can be kept from there."),
        readings.map((each) => setView(each, actions)),
      );
    },
  };
}
