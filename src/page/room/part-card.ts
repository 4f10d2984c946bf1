import { PRESETS } from "../../bench/room/figures.ts";
import type { Part } from "../../build-file/schema.ts";
import { capitalised } from "../../english.ts";
import { h } from "../dom/element.ts";
import type { FormField } from "../fields/form-fields.ts";
import type { Option } from "../fields/plain-fields.ts";
import type { PartEntry, PartField } from "./entries.ts";
import { entryArea, entryChoice, entryText, fieldRow } from "./entry-fields.ts";

export interface CardOf {
  readonly element: HTMLElement;
  readonly fields: readonly FormField[];
}

const SIDE_OPTIONS: readonly Option[] = [
  { value: "", label: "not said" },
  { value: "bass", label: "bass side" },
  { value: "treble", label: "treble side" },
  { value: "bridge", label: "bridge end" },
  { value: "neck", label: "neck end" },
];

function outlineOptions(kind: Part["kind"]): readonly Option[] {
  const sold = Object.entries(PRESETS).filter(([, preset]) => preset.kind === kind);
  return [
    { value: "", label: "not said" },
    ...sold.map(([value, { title }]) => ({ value, label: title })),
    { value: "round", label: "round, as measured" },
    { value: "box", label: "a rectangle, as measured" },
    { value: "own", label: "a line of its own" },
  ];
}

/** Which of the outline's fields go with what was chosen. */
function outlineFields(path: string, kind: Part["kind"], entry: PartEntry, take: (f: PartField, text: string) => void) {
  const size = entryText(
    {
      path: `${path}.outline`,
      label: "Its diameter, or along x across, mm",
      value: entry.size ?? "",
      placeholder: "24, or 50 x 16",
    },
    (text) => take("size", text),
  );
  const points = entryArea(
    {
      path: `${path}.outline`,
      label: "Its line about its middle: x, y in mm, a point a line",
      value: entry.points ?? "",
    },
    (text) => take("points", text),
  );
  const show = (outline: string) => {
    size.element.hidden = outline !== "round" && outline !== "box";
    points.element.hidden = outline !== "own";
  };
  const outline = entryChoice(
    { path: `${path}.choice`, label: "What lies under the guard", value: entry.outline ?? "" },
    outlineOptions(kind),
    (text) => {
      show(text);
      take("outline", text);
    },
  );
  show(entry.outline ?? "");
  return [outline, size, points];
}

const SAID: readonly (readonly [PartField, string])[] = [
  ["outline", "outline"],
  ["depth", "depth"],
];

/** What of a part was said already, for its folded card. */
function saidText(entry: PartEntry): string {
  const open = SAID.filter(([field]) => !entry[field]).map(([, word]) => word);
  return open.length === 0 ? "measured" : `${open.join(" and ")} not said`;
}

/** What a person measures of one part, folded away under its name. */
export function partCard(
  [name, part]: readonly [string, Part],
  words: string,
  entry: PartEntry,
  take: (field: PartField, text: string) => void,
): CardOf {
  const path = `parts.${name}`;
  const said = h("small", { class: "hint" }, saidText(entry));
  let current = entry;
  const taken = (field: PartField, text: string) => {
    current = { ...current, [field]: text };
    said.textContent = saidText(current);
    take(field, text);
  };
  const text = (field: PartField, label: string, placeholder = "") =>
    entryText({ path: `${path}.${field}`, label, value: entry[field] ?? "", placeholder }, (typed) =>
      taken(field, typed),
    );
  const isPickup = part.kind === "pickup";
  const standing = isPickup ? "cable" : "lugs";
  const fields = [
    ...outlineFields(path, part.kind, entry, taken),
    text("depth", "Depth under the guard, mm"),
    ...(isPickup
      ? [
          text("ears", "Ears and base plate, along x across, mm", "from end to end"),
          text("poleSpacing", "First pole to last, mm"),
        ]
      : [text("bushing", "Length of its thread, mm"), text("hole", "Hole in the guard, mm", "8, or a slot as 3 x 30")]),
    entryChoice(
      { path: `${path}.side`, label: `Its ${standing} stand out on the`, value: entry.side ?? "" },
      SIDE_OPTIONS,
      (typed) => taken("side", typed),
    ),
    text("reach", `From its middle to the ${standing}' end, mm`),
    text("width", `Width of the ${standing}, mm`),
  ];
  const element = h(
    "details",
    { class: "room-part", "data-room-part": name },
    h("summary", {}, h("b", {}, capitalised(words)), " ", said),
    fieldRow(fields),
  );
  return { element, fields };
}
