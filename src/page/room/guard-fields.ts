import { SCALES } from "../../bench/room/figures.ts";
import { freshId, h } from "../dom/element.ts";
import type { FormField } from "../fields/form-fields.ts";
import type { GuardEntry, GuardField } from "./entries.ts";
import { entryArea, entryText, fieldRow } from "./entry-fields.ts";
import type { CardOf } from "./part-card.ts";

const LENGTHS: readonly (readonly [GuardField, path: string, label: string, placeholder?: string])[] = [
  ["thickness", "guard.thickness", "Thickness of the guard, mm"],
  ["stack", "guard.stack", "Nut and washers on a thread, together, mm"],
  ["nut", "strings.nut", "First string to last at the nut, mm"],
  ["bridge", "strings.bridge", "First string to last at the bridge, mm"],
  ["scale", "strings.scale", "Scale, mm", "the build's"],
  ["screwDiameter", "guard.screwDiameter", "Diameter of the guard's screw holes, mm"],
  ["tolerance", "tolerance", "A measured line may be off by, mm", "0.5"],
];

const LINES: readonly (readonly [GuardField, path: string, label: string])[] = [
  ["screws", "guard.screws", "The guard's screws: x, y in mm, one a line"],
  ["edge", "guard.outline", "The guard's edge: x, y in mm, a point a line"],
];

/** Scales that are sold, to choose from while typing one. */
function offerScales({ element }: FormField): HTMLElement {
  const id = freshId("scales");
  element.querySelector("input")!.setAttribute("list", id);
  return h(
    "datalist",
    { id },
    SCALES.millimetres.map((value) => h("option", { value })),
  );
}

/** What concerns the guard as a whole, and the strings over it. */
export function guardFields(entry: GuardEntry, take: (field: GuardField, text: string) => void): CardOf {
  const lengths = LENGTHS.map(
    ([field, path, label, placeholder = ""]): FormField =>
      entryText({ path, label, value: entry[field] ?? "", placeholder }, (text) => take(field, text)),
  );
  const lines = LINES.map(
    ([field, path, label]): FormField =>
      entryArea({ path, label, value: entry[field] ?? "" }, (text) => take(field, text)),
  );
  const element = h(
    "section",
    { class: "stack", "aria-label": "The guard and the strings" },
    h("h4", {}, "The guard and the strings"),
    fieldRow(lengths),
    offerScales(lengths.find(({ path }) => path === "strings.scale")!),
    h("details", {}, h("summary", {}, "Its screws and its edge"), fieldRow(lines)),
  );
  return { element, fields: [...lengths, ...lines] };
}
