import { h, replaceContent } from "../../dom/element.ts";
import { type FormField, formChoice } from "../../fields/form-fields.ts";
import type { Store } from "../../state/store.ts";
import { type Drawn, type LeadNotes, leadsOf, rowsOf, type Tap } from "./notes.ts";

type Notes = Store<LeadNotes>;

const KICKS = [
  { value: "up", label: "up" },
  { value: "down", label: "down" },
  { value: "none", label: "none, or hardly" },
] as const;

const options = (names: readonly string[]) => names.map((value) => ({ value, label: value }));

const tapWords = ({ row, between: [plus, minus], kick }: Tap) =>
  `${row}, + on ${plus}, − on ${minus}: ${kick === "none" ? "no kick" : kick}`;

/** A tap of the same row on the same leads takes the place of the one before. */
export function withTap(taps: readonly Tap[], tap: Tap): readonly Tap[] {
  const ends = (each: Tap) => `${each.row} ${[...each.between].sort().join()}`;
  return [...taps.filter((each) => ends(each) !== ends(tap)), tap];
}

function tapList(notes: Notes): HTMLElement {
  const list = h("ul", { class: "told" });
  notes.watch(
    ({ taps }) => [taps],
    (taps) =>
      replaceContent(
        list,
        taps.map((tap) =>
          h(
            "li",
            {},
            `${tapWords(tap)} `,
            h(
              "button",
              {
                type: "button",
                class: "quiet",
                "aria-label": `Take out: ${tapWords(tap)}`,
                onclick: () => notes.set({ taps: notes.state.taps.filter((each) => each !== tap) }),
              },
              "Take out",
            ),
          ),
        ),
      ),
  );
  return list;
}

interface TapFields {
  readonly row: FormField;
  readonly plus: FormField;
  readonly minus: FormField;
  readonly kick: FormField<Tap["kick"]>;
}

function tapFields(notes: LeadNotes): TapFields {
  const leads = leadsOf(notes);
  return {
    row: formChoice("kicks.row", "Row tapped", options(rowsOf(notes))),
    plus: formChoice("kicks.plus", "+ on", options(leads)),
    minus: formChoice("kicks.minus", "− on", options([...leads.slice(1), ...leads.slice(0, 1)])),
    kick: formChoice("kicks.kick", "It kicked", KICKS),
  };
}

function addTap(notes: Notes): HTMLElement {
  const holder = h("div", { class: "row add-row" });
  let fields = tapFields(notes.state);
  const add = () => {
    const [row, plus, minus, kick] = [fields.row.read(), fields.plus.read(), fields.minus.read(), fields.kick.read()];
    fields.minus.showFault(plus === minus ? "expected another lead than +" : undefined);
    if (plus !== minus) notes.set({ taps: withTap(notes.state.taps, { row, between: [plus, minus], kick }) });
  };
  notes.watchAny(
    ({ leads, coils, rows }) => [leads, coils, rows],
    () => {
      fields = tapFields(notes.state);
      const all = [fields.row, fields.plus, fields.minus, fields.kick].map(({ element }) => element);
      replaceContent(holder, all, h("button", { type: "button", onclick: add }, "Add this tap"));
    },
  );
  return holder;
}

/** Which way the needle went as each row was tapped. */
export function createTaps(notes: Notes): HTMLElement {
  return h(
    "fieldset",
    { class: "stack" },
    h("legend", {}, "Taps on the poles"),
    h(
      "p",
      { class: "hint" },
      "The meter's first kick as a screwdriver's tip is pulled off the row: up is towards +. Always with the same meter.",
    ),
    tapList(notes),
    addTap(notes),
  );
}

const ENDS = [
  { value: "", label: "not tried" },
  { value: "north", label: "the end that points north" },
  { value: "south", label: "the end that points south" },
] as const;

function compassField(notes: Notes, row: string): HTMLElement {
  const field = formChoice<Drawn | "">("compass", `The ${row} draw`, ENDS);
  const select = field.element.querySelector("select")!;
  select.addEventListener("change", () => notes.set({ compass: { ...notes.state.compass, [row]: field.read() } }));
  notes.watch(
    ({ compass }) => [compass[row] ?? ""],
    (draws) => {
      select.value = draws;
    },
  );
  return field.element;
}

/** Which end of a compass needle each row draws. */
export function createCompass(notes: Notes): HTMLElement {
  const holder = h("div", { class: "field-row" });
  let known = "";
  notes.watchAny(
    ({ coils, rows }) => [coils, rows],
    () => {
      const all = rowsOf(notes.state);
      if (all.join() === known) return;
      known = all.join();
      replaceContent(
        holder,
        all.map((row) => compassField(notes, row)),
      );
    },
  );
  return h("fieldset", { class: "stack" }, h("legend", {}, "Compass over the poles"), holder);
}
