import { DIELECTRICS } from "../../../build-file/catalogue/dielectrics.ts";
import { SWITCH_WORDS } from "../../../build-file/switch-words.ts";
import { freshId, h } from "../../dom/element.ts";
import { type FormField, formChoice, formText } from "../../fields/form-fields.ts";
import type { BuildSource } from "../../state/reading.ts";
import { createPickupField } from "./pickup-field.ts";

const SORTS = [
  { value: "pot", label: "Pot" },
  { value: "cap", label: "Cap" },
  { value: "resistor", label: "Resistor" },
  { value: "pickup", label: "Pickup" },
  { value: "switch", label: "Switch" },
  { value: "jack", label: "Jack" },
  { value: "wire", label: "Wire" },
] as const;
export type Sort = (typeof SORTS)[number]["value"];

const TAPERS = [
  { value: "audio", label: "audio (A)" },
  { value: "linear", label: "linear (B)" },
  { value: "reverse-audio", label: "reverse audio (C)" },
];

/** What has one value that a meter reads. */
export const VALUES: Readonly<Partial<Record<Sort, "resistance" | "capacitance">>> = {
  pot: "resistance",
  cap: "capacitance",
  resistor: "resistance",
};

export interface PartFields {
  readonly sort: FormField<Sort>;
  readonly value: FormField;
  readonly elements: readonly HTMLElement[];
  /** Shows those fields alone that the sort has. */
  show(): void;
  /** The part as a build file has it. */
  part(): object;
}

/** What a part is. @param source of the guard on the bench */
export function createPartFields(source: () => BuildSource | undefined): PartFields {
  const sort = formChoice<Sort>("sort", "What", SORTS);
  const value = formText("value", "Value", "250k");
  const taper = formChoice("taper", "Taper", TAPERS);
  const make = formChoice("make", "Made of", [
    { value: "", label: "not known" },
    ...DIELECTRICS.map(({ name, title }) => ({ value: name, label: title })),
  ]);
  const switches = Object.entries(SWITCH_WORDS).map(([each, label]) => ({ value: each, label }));
  const type = formChoice("type", "Which switch", switches);
  const pushPull = h("input", { type: "checkbox", id: freshId("push-pull") });
  const pulled = h("label", { class: "tick", for: pushPull.id }, pushPull, " with a push-pull switch");
  const pickup = createPickupField(source);
  const shownFor: readonly (readonly [HTMLElement, readonly Sort[]])[] = [
    [pickup.element, ["pickup"]],
    [value.element, ["pot", "cap", "resistor"]],
    [taper.element, ["pot"]],
    [make.element, ["cap"]],
    [type.element, ["switch"]],
    [pulled, ["pot"]],
  ];
  const parts: Readonly<Record<Exclude<Sort, "wire">, () => object>> = {
    pot: () => ({
      kind: "pot",
      resistance: value.read(),
      taper: taper.read(),
      ...(pushPull.checked ? { drives: "dpdt" } : {}),
    }),
    cap: () => ({ kind: "cap", capacitance: value.read(), ...(make.read() ? { dielectric: make.read() } : {}) }),
    resistor: () => ({ kind: "resistor", resistance: value.read() }),
    pickup: () => pickup.part(),
    switch: () => ({ kind: "switch", type: type.read() }),
    jack: () => ({ kind: "jack" }),
  };
  return {
    sort,
    value,
    elements: [sort.element, ...shownFor.map(([element]) => element)],
    show: () => {
      for (const [element, sorts] of shownFor) element.hidden = !sorts.includes(sort.read());
      if (sort.read() === "pickup") pickup.show();
    },
    part: () => parts[sort.read() as Exclude<Sort, "wire">](),
  };
}
