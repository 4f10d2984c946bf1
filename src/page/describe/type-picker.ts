import { CATALOGUE } from "../../build-file/catalogue.ts";
import { hasCoilLeads } from "../../build-file/lug-names.ts";
import { hotCoilIn, swapPickup, turnPickup } from "../../build-file/swap/swap-pickup.ts";
import { h } from "../dom/element.ts";
import { assembleField, type Field } from "../fields/field.ts";
import type { Editor } from "../state/editor.ts";
import type { BuildSource, PartSource } from "../state/reading.ts";
import { coilsOf, coilWords } from "./coil-words.ts";

/** The guard as the swaps take it; they keep to what they know of it and need it not to be readable. */
type Guard = BuildSource & Parameters<typeof swapPickup>[0];

interface Choice {
  readonly value: string;
  readonly label: string;
}

function choice(path: readonly string[], label: string, onChoose: (value: string) => void) {
  const select = h("select", { onchange: () => onChoose(select.value) });
  let shown = "";
  const field = assembleField({ path: [...path], label }, { control: select, toControl: () => {} });
  const show = (options: readonly Choice[], value: string) => {
    const key = JSON.stringify(options);
    if (key !== shown) select.replaceChildren(...options.map((each) => h("option", { value: each.value }, each.label)));
    shown = key;
    select.value = value;
  };
  return { element: field.element, show, value: () => select.value };
}

const TYPES: readonly Choice[] = [
  { value: "", label: "its own values" },
  ...CATALOGUE.pickups.map((type) => ({ value: type.name, label: type.title })),
];

const hasOneCoil = (type: string) => {
  const found = CATALOGUE.pickups.find(({ name }) => name === type);
  return found !== undefined && Object.keys(found.coils).length === 1;
};

function withoutType({ type: _, ...part }: PartSource): PartSource {
  return part as PartSource;
}

/** Puts another pickup in a place, its wires with it; with four leads, which coil lies at the hot end. */
export function createTypePicker(
  name: string,
  editor: Editor,
): Pick<Field, "element" | "show"> & { readonly typeField: Pick<Field, "path" | "element"> } {
  const at = ["parts", name];
  const swapTo = (type: string) => {
    const inPlaceOf = hasOneCoil(type) && sits.value() !== "" ? sits.value() : undefined;
    return editor.rework((source) =>
      type === ""
        ? { ...source, parts: { ...source.parts, [name]: withoutType(source.parts[name]!) } }
        : swapPickup(source as Guard, name, { type, inPlaceOf }),
    );
  };
  const type = choice([...at, "type"], "Which pickup", (value) => void swapTo(value));
  const hotCoil = choice(
    [...at, "hotCoil"],
    "Coil at the hot end",
    (coil) => void editor.rework((source) => turnPickup(source as Guard, name, coil)),
  );
  const sits = choice([...at, "inPlaceOf"], "A single coil in its place would sit", () => {});
  return {
    typeField: { path: [...at, "type"], element: type.element },
    element: h("div", { class: "field-grid pickup-choice" }, type.element, hotCoil.element, sits.element),
    show: (source) => {
      const part = source.parts[name];
      if (part?.kind !== "pickup") return;
      const coils = Object.keys(coilsOf(part)).map((coil) => ({ value: coil, label: coilWords(part, coil) }));
      type.show(TYPES, typeof part.type === "string" ? part.type : "");
      hotCoil.element.hidden = coils.length < 2 || !hasCoilLeads(part as never);
      if (!hotCoil.element.hidden) hotCoil.show(coils, hotCoilIn(source as Guard, name) ?? "");
      sits.element.hidden = coils.length < 2;
      const places = coils.map(({ value, label }) => ({ value, label: `where the ${label} is` }));
      sits.show([{ value: "", label: "in the middle between its coils" }, ...places], sits.value());
    },
  };
}
