import { freshId, h, replaceContent } from "../../dom/element.ts";
import type { Store } from "../../state/store.ts";
import { type LeadNotes, METAL, ohmsComplaint, ohmsKey, pairsOf } from "./notes.ts";

function ohmsField(notes: Store<LeadNotes>, [a, b]: readonly [string, string]): HTMLElement {
  const key = ohmsKey(a, b);
  const id = freshId("ohms");
  const fault = h("p", { class: "fault-text", id: `${id}-fault`, hidden: true });
  const input = h("input", {
    type: "text",
    id,
    class: "short",
    autocomplete: "off",
    value: notes.state.ohms[key] ?? "",
  });
  const check = () => {
    const complaint = ohmsComplaint(input.value);
    fault.textContent = complaint;
    fault.hidden = complaint === "";
    if (complaint === "") input.removeAttribute("aria-invalid");
    else input.setAttribute("aria-invalid", "true");
    if (complaint === "") input.removeAttribute("aria-describedby");
    else input.setAttribute("aria-describedby", fault.id);
  };
  input.addEventListener("input", () => {
    notes.set({ ohms: { ...notes.state.ohms, [key]: input.value } });
    check();
  });
  // What the next test fills in stands here too.
  notes.watch(
    ({ ohms }) => [ohms[key] ?? ""],
    (text) => {
      if (text !== input.value) input.value = text;
    },
  );
  check();
  return h("div", { class: "field" }, h("label", { for: id }, `${a} – ${b}`), input, fault);
}

/** A field for every pair of leads, and for each lead and the metal. */
export function createOhmsFields(notes: Store<LeadNotes>): HTMLElement {
  const grid = h("div", { class: "lead-grid" });
  let known = "";
  const draw = () => {
    const pairs = pairsOf(notes.state);
    const key = JSON.stringify(pairs);
    if (key === known) return;
    known = key;
    replaceContent(
      grid,
      pairs.map((pair) => ohmsField(notes, pair)),
    );
  };
  notes.watchAny(({ leads, hasMetal }) => [leads, hasMetal], draw);
  return h(
    "fieldset",
    { class: "stack" },
    h("legend", {}, "Ohms between leads"),
    h(
      "p",
      { class: "hint" },
      `As the meter shows it: 4.1k, 0.3, open or OL. ${METAL.charAt(0).toUpperCase()}${METAL.slice(1)}: cover, base plate or braid.`,
    ),
    grid,
  );
}
