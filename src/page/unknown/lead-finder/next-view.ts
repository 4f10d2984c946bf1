import { h } from "../../dom/element.ts";
import type { LeadsTold } from "../../engine/leads-told.ts";
import type { Store } from "../../state/store.ts";
import {
  type AskedTest,
  type Drawn,
  type LeadNotes,
  METAL,
  ohmsComplaint,
  ohmsKey,
  resultKey,
  type Tap,
  tapKey,
  withRepeat,
} from "./notes.ts";
import { withTap } from "./taps.ts";

type Notes = Store<LeadNotes>;

const press = (label: string, onclick: () => void) => h("button", { type: "button", onclick }, label);

function ohmsResult(notes: Notes, a: string, b: string, label: string): HTMLElement {
  const key = ohmsKey(a, b);
  const fill = (text: string) => {
    const { state } = notes;
    if (state.ohms[key] === text) notes.set(withRepeat(state, resultKey(key, text)));
    else notes.set({ ohms: { ...state.ohms, [key]: text } });
  };
  const input = h("input", {
    type: "text",
    class: "short",
    autocomplete: "off",
    "aria-label": `${label}, ohms`,
    "data-next": "ohms",
  });
  const fault = h("p", { class: "fault-text", role: "alert" });
  const submit = (event: Event) => {
    event.preventDefault();
    const text = input.value.trim();
    const complaint = text === "" ? "what did the meter show?" : ohmsComplaint(text);
    fault.textContent = complaint;
    if (complaint === "") fill(text);
  };
  return h(
    "form",
    { class: "row", onsubmit: submit, "aria-label": label },
    input,
    h("button", { type: "submit" }, "It read this"),
    press("Open", () => fill("open")),
    press("A joint, under 3 Ω", () => fill("0.3")),
    fault,
  );
}

function tapResult(notes: Notes, { row, between: [plus, minus] }: Extract<AskedTest, { kind: "kick" }>): HTMLElement {
  const fill = (kick: Tap["kick"]) => () => {
    const tap: Tap = { row, between: [plus, minus], kick };
    const { state } = notes;
    if (state.taps.some((each) => tapKey(each) === tapKey(tap))) notes.set(withRepeat(state, tapKey(tap)));
    else notes.set({ taps: withTap(state.taps, tap) });
  };
  return h(
    "div",
    { class: "buttons" },
    press("It kicked up", fill("up")),
    press("It kicked down", fill("down")),
    press("No kick", fill("none")),
  );
}

function compassResult(notes: Notes, row: string): HTMLElement {
  const fill = (draws: Drawn) => () => {
    const { state } = notes;
    if (state.compass[row] === draws) notes.set(withRepeat(state, resultKey(row, draws)));
    else notes.set({ compass: { ...state.compass, [row]: draws } });
  };
  return h(
    "div",
    { class: "buttons" },
    press("It draws the north end", fill("north")),
    press("It draws the south end", fill("south")),
  );
}

function resultOf(notes: Notes, test: AskedTest, label: string): HTMLElement {
  switch (test.kind) {
    case "reading":
      return ohmsResult(notes, test.between[0], test.between[1], label);
    case "metal":
      return ohmsResult(notes, test.lead, METAL, label);
    case "kick":
      return tapResult(notes, test);
    case "compass":
      return compassResult(notes, test.row);
  }
}

/** The test that tells most, with its result one press away. */
export function nextView(notes: Notes, { next, doubts }: LeadsTold): HTMLElement {
  if (!next)
    return h(
      "p",
      { class: "next-lead" },
      h("b", {}, "Nothing more to measure: "),
      "no further reading, tap or compass tells anything worth the trouble.",
      doubts.length > 0 && " But see what is doubtful below before you solder.",
    );
  return h(
    "div",
    { class: "next-lead stack" },
    h("p", {}, h("b", {}, `Next: ${next.label}. `), next.instruction),
    resultOf(notes, next.test, next.label),
  );
}
