import { createNumberSetting } from "../../bench/number-setting.ts";
import { freshId, h } from "../../dom/element.ts";
import { formChoice } from "../../fields/form-fields.ts";
import type { Store } from "../../state/store.ts";
import { type LeadNotes, leadsComplaint } from "./notes.ts";

type Notes = Store<LeadNotes>;

function textField(label: string, value: string, take: (text: string) => string): HTMLElement {
  const id = freshId("lead-text");
  const fault = h("p", { class: "fault-text", id: `${id}-fault`, hidden: true });
  const input = h("input", { type: "text", id, value, autocomplete: "off", spellcheck: "false" });
  input.addEventListener("input", () => {
    const complaint = take(input.value);
    fault.textContent = complaint;
    fault.hidden = complaint === "";
    input.toggleAttribute("aria-invalid", false);
    input.removeAttribute("aria-describedby");
    if (complaint === "") return;
    input.setAttribute("aria-invalid", "true");
    input.setAttribute("aria-describedby", fault.id);
  });
  return h("div", { class: "field" }, h("label", { for: id }, label), input, fault);
}

function coilsField(notes: Notes): HTMLElement {
  const field = formChoice("coils", "Coils", [
    { value: "2", label: "two" },
    { value: "1", label: "one" },
    { value: "", label: "one or two, I do not know" },
  ]);
  field.element.addEventListener("change", () => notes.set({ coils: field.read() as LeadNotes["coils"] }));
  return field.element;
}

function metalField(notes: Notes): HTMLElement {
  const field = formChoice("metal", "Metal", [
    { value: "some", label: "cover, base plate or braid" },
    { value: "none", label: "none" },
  ]);
  field.element.addEventListener("change", () => notes.set({ hasMetal: field.read() === "some" }));
  return field.element;
}

function rowsField(notes: Notes): HTMLElement {
  const element = textField("Rows of poles, two names", notes.state.rows, (rows) => {
    notes.set({ rows });
    const names = rows.split(",").map((name) => name.trim());
    const areTwo = names.length === 2 && names.every(Boolean) && names[0] !== names[1];
    return areTwo
      ? ""
      : "Expected two different names with a comma between them; until then they are the first and the second row.";
  });
  notes.watch(
    ({ coils }) => [coils],
    (coils) => {
      element.hidden = coils !== "2";
    },
  );
  return element;
}

/** What there is to be told apart. */
export function createSetupFields(notes: Notes): HTMLElement {
  const leads = textField("Leads, by names of your own", notes.state.leads, (text) => {
    notes.set({ leads: text });
    return leadsComplaint({ leads: text });
  });
  return h(
    "div",
    { class: "field-row" },
    leads,
    coilsField(notes),
    rowsField(notes),
    metalField(notes),
    createNumberSetting(
      {
        name: "lead-temperature",
        label: "Room and coils, °C",
        unit: "°C",
        value: notes.state.temperature,
        min: -40,
        max: 100,
      },
      (temperature) => notes.set({ temperature }),
    ),
  );
}
