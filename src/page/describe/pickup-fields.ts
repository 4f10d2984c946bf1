import type { Commit, Field } from "../fields/field.ts";
import { choiceField, numberField } from "../fields/plain-fields.ts";
import { quantityField } from "../fields/quantity-field.ts";
import { getAt } from "../state/paths.ts";
import type { PartSource } from "../state/reading.ts";
import { METALS, metalOf } from "./metal-of.ts";

/** Fields of the pickup as a whole. */
export function pickupFields(name: string, commit: Commit): Field[] {
  return [
    choiceField(
      {
        path: ["parts", name, "metal"],
        label: "Metal on the shield lug",
        options: ["", "cover", "baseplate", "braid", "none"].map((value) => ({ value, label: value || "not said" })),
      },
      commit,
    ),
  ];
}

/** Sections have no field; there is one where the loss is one resistor or none. */
function whereNoSections(field: Field): Field {
  return {
    ...field,
    show: (source) => {
      field.element.hidden = Array.isArray(getAt(source, field.path));
      if (!field.element.hidden) field.show(source);
    },
  };
}

function oneCoil(name: string, coil: string, heading: string, commit: Commit): Field[] {
  const at = (key: string) => ["parts", name, "coils", coil, key];
  const called = (label: string) => (heading === "" ? label : `${heading}: ${label}`);
  return [
    quantityField({ path: at("resistance"), label: called("DC resistance"), dimension: "resistance" }, commit),
    quantityField({ path: at("inductance"), label: called("inductance"), dimension: "inductance" }, commit),
    quantityField({ path: at("capacitance"), label: called("winding capacitance"), dimension: "capacitance" }, commit),
    whereNoSections(
      quantityField({ path: at("loss"), label: called("loss resistor"), dimension: "resistance" }, commit),
    ),
    choiceField(
      {
        path: at("winding"),
        label: called("winding"),
        otherwise: "forward",
        options: ["forward", "reverse"].map((value) => ({ value, label: value })),
      },
      commit,
    ),
    choiceField(
      {
        path: at("magnet"),
        label: called("magnet, top"),
        otherwise: "north",
        options: ["north", "south"].map((value) => ({ value, label: value })),
      },
      commit,
    ),
    choiceField(
      {
        path: at("shielding"),
        label: called("metal that dims it"),
        hint: `How much less treble the coil's EMF has for it`,
        options: [{ value: "", label: "none" }, ...METALS.map(({ name: value, title }) => ({ value, label: title }))],
        toSource: (chosen) => METALS.find(({ name }) => name === chosen)?.shielding,
        fromSource: (value) => metalOf(value)?.name ?? "own",
        ownLabel: "its own",
      },
      commit,
    ),
    numberField(
      {
        path: at("output"),
        label: called("output (1: reference)"),
        hint: "At the height it has. What a turn of its screws does is told under Heights, from recordings at two heights or more: nobody has published it",
      },
      commit,
    ),
    quantityField({ path: at("distance"), label: called("distance from the bridge"), dimension: "length" }, commit),
  ];
}

/** Fields of each coil. */
export function coilFields(name: string, part: PartSource, commit: Commit): Field[] {
  const coils = Object.keys((part.coils ?? {}) as object);
  return [
    ...coils.flatMap((coil) => oneCoil(name, coil, coils.length > 1 ? coil : "", commit)),
    ...(coils.length > 1
      ? [numberField({ path: ["parts", name, "coupling"], label: "Coupling of the coils (k)" }, commit)]
      : []),
  ];
}
