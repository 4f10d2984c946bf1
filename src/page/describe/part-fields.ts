import { DIELECTRICS } from "../../build-file/catalogue/dielectrics.ts";
import type { Commit, Field } from "../fields/field.ts";
import { choiceField, flagField, numberField, textField } from "../fields/plain-fields.ts";
import { quantityField } from "../fields/quantity-field.ts";
import type { PartSource } from "../state/reading.ts";
import { angleField } from "./angle-field.ts";
import { coilFields, pickupFields } from "./pickup-fields.ts";
import { taperTableField } from "./taper-table-field.ts";
import { SWITCH_OPTIONS, TAPER_OPTIONS } from "./words.ts";

/** The fields of a part: those one looks at first, and the rest. */
export interface PartFields {
  readonly first: readonly Field[];
  readonly more: readonly Field[];
}

type Maker = (name: string, part: PartSource, commit: Commit) => PartFields;

const potFields: Maker = (name, _part, commit) => ({
  first: [
    quantityField({ path: ["parts", name, "resistance"], label: "Track", dimension: "resistance" }, commit),
    choiceField(
      { path: ["parts", name, "taper"], label: "Taper", options: TAPER_OPTIONS, otherwise: "linear" },
      commit,
    ),
  ],
  more: [
    choiceField(
      {
        path: ["parts", name, "role"],
        label: "Used as",
        options: ["", "volume", "tone", "blend", "other"].map((value) => ({ value, label: value || "not said" })),
      },
      commit,
    ),
    numberField({ path: ["parts", name, "midpoint"], label: "Share of track at half turn (0–1)" }, commit),
    quantityField({ path: ["parts", name, "measured"], label: "Measured track", dimension: "resistance" }, commit),
    quantityField(
      { path: ["parts", name, "endResistance"], label: "Resistance left at either end", dimension: "resistance" },
      commit,
    ),
    angleField(name, commit),
    taperTableField(name, commit),
    flagField({ path: ["parts", name, "noLoad"], label: "Lifts off at 10 (no-load)" }, commit),
    choiceField(
      {
        path: ["parts", name, "drives"],
        label: "Switch on the shaft",
        options: [{ value: "", label: "none" }, ...SWITCH_OPTIONS],
        fromSource: (value) => (typeof value === "object" ? String((value as { type?: string }).type) : String(value)),
      },
      commit,
    ),
  ],
});

const switchFields: Maker = (name, part, commit) => ({
  first: part.positions
    ? []
    : [choiceField({ path: ["parts", name, "type"], label: "Type", options: SWITCH_OPTIONS }, commit)],
  more: [],
});

const capFields: Maker = (name, _part, commit) => ({
  first: [
    quantityField({ path: ["parts", name, "capacitance"], label: "Capacitance", dimension: "capacitance" }, commit),
    choiceField(
      {
        path: ["parts", name, "dielectric"],
        label: "Made of",
        options: [
          { value: "", label: "not said (no loss)" },
          ...DIELECTRICS.map(({ name: value, title }) => ({ value, label: title })),
        ],
      },
      commit,
    ),
  ],
  more: [numberField({ path: ["parts", name, "lossFactor"], label: "Its own tan δ (0.01 is 1 %)" }, commit)],
});

const resistorFields: Maker = (name, _part, commit) => ({
  first: [quantityField({ path: ["parts", name, "resistance"], label: "Resistance", dimension: "resistance" }, commit)],
  more: [],
});

const nothing: Maker = () => ({ first: [], more: [] });

const MAKERS: Readonly<Record<string, Maker>> = {
  pot: potFields,
  switch: switchFields,
  cap: capFields,
  resistor: resistorFields,
  pickup: (name, part, commit) => ({
    first: [],
    more: [...pickupFields(name, commit), ...coilFields(name, part, commit)],
  }),
  jack: (name, _part, commit) => ({
    first: [],
    more: [flagField({ path: ["parts", name, "stereo"], label: "Stereo (has a ring)" }, commit)],
  }),
};

export function fieldsOfPart(name: string, part: PartSource, commit: Commit): PartFields {
  const { first, more } = (MAKERS[part.kind] ?? nothing)(name, part, commit);
  const common = [
    textField({ path: ["parts", name, "label"], label: "Called" }, commit),
    ...(["pot", "cap", "resistor", "pickup"].includes(part.kind)
      ? [numberField({ path: ["parts", name, "tolerance"], label: "Tolerance (0.1 is ±10 %)" }, commit)]
      : []),
  ];
  return { first, more: [...more, ...common] };
}

/** What decides which fields a part has. */
export function partShape(part: PartSource): string {
  const coils = part.coils;
  const names = typeof coils === "object" && coils !== null ? Object.keys(coils) : [];
  return JSON.stringify([part.kind, names, part.positions !== undefined]);
}
