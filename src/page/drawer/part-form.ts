import { DIELECTRICS } from "../../build-file/catalogue/dielectrics.ts";
import { CATALOGUE } from "../../build-file/catalogue.ts";
import { parseQuantity, QuantityError } from "../../build-file/quantity.ts";
import { SWITCH_WORDS } from "../../build-file/switch-words.ts";
import type { Dimension } from "../../build-file/units.ts";
import { WIRE_KINDS } from "../../build-file/wire-kinds.ts";
import type { KeptItem, KeptReel } from "../../drawer/kept-drawer.ts";
import { MAX_DRAWER_QUANTITY, MAX_PRICE } from "../../limits.ts";
import { freshId, h } from "../dom/element.ts";
import { type FormField, formChoice, formText } from "../fields/form-fields.ts";
import type { BuildSource } from "../state/reading.ts";

export type NewEntry =
  | { readonly kind: "item"; readonly item: Omit<KeptItem, "id"> }
  | { readonly kind: "reel"; readonly reel: Omit<KeptReel, "id"> };

const SORTS = [
  { value: "pot", label: "Pot" },
  { value: "cap", label: "Cap" },
  { value: "resistor", label: "Resistor" },
  { value: "pickup", label: "Pickup" },
  { value: "switch", label: "Switch" },
  { value: "jack", label: "Jack" },
  { value: "wire", label: "Wire" },
] as const;
type Sort = (typeof SORTS)[number]["value"];

const TAPERS = [
  { value: "audio", label: "audio (A)" },
  { value: "linear", label: "linear (B)" },
  { value: "reverse-audio", label: "reverse audio (C)" },
];
const VALUES = { pot: "resistance", cap: "capacitance", resistor: "resistance" } as const;
const FROM_BENCH = "bench:";

/** What is wrong with a value as it was typed; undefined where nothing is. */
export function quantityFault(text: string, dimension: Dimension): string | undefined {
  try {
    return parseQuantity(text, dimension).value > 0 ? undefined : "expected more than 0";
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
}

/** "21.3n, 22.1n": values apart by commas, semicolons or spaces before a digit. */
export const measuredIn = (text: string) => text.split(/[,;]\s*|\s+(?=\d)/).filter((value) => value.trim() !== "");

export function countFault(text: string, least: number): string | undefined {
  const count = Number(text);
  const isCount = text !== "" && Number.isInteger(count) && count >= least && count <= MAX_DRAWER_QUANTITY;
  return isCount ? undefined : `expected a whole number from ${least} to ${MAX_DRAWER_QUANTITY}`;
}

export function priceFault(text: string): string | undefined {
  const price = Number(text);
  return text === "" || (price >= 0 && price <= MAX_PRICE) ? undefined : "expected a plain number, such as 4.50";
}

/** Says what is wrong with some fields. @returns whether nothing is */
function areRight(faults: readonly (readonly [FormField, string | undefined])[]): boolean {
  for (const [field, fault] of faults) field.showFault(fault);
  return faults.every(([, fault]) => fault === undefined);
}

function pickupChoices(source: BuildSource | undefined) {
  const own = Object.entries(source?.parts ?? {}).flatMap(([name, { kind }]) =>
    kind === "pickup"
      ? [{ value: `${FROM_BENCH}${name}`, label: `the ${name} of the guard on the bench, as measured there` }]
      : [],
  );
  return [...CATALOGUE.pickups.map(({ name, title }) => ({ value: name, label: title })), ...own];
}

function pickupPart(value: string, source: BuildSource | undefined): object {
  if (value.startsWith(FROM_BENCH)) {
    const {
      label: _label,
      place: _place,
      leads: _leads,
      ...part
    } = source!.parts[value.slice(FROM_BENCH.length)] as {
      label?: unknown;
      place?: unknown;
      leads?: unknown;
      kind: string;
    };
    return part;
  }
  const { coils, conductors, coupling, metal } = CATALOGUE.pickups.find(({ name }) => name === value)!;
  const said = Object.entries({ conductors, coupling, metal }).filter(([, each]) => each !== undefined);
  return { kind: "pickup", type: value, coils, ...Object.fromEntries(said) };
}

/** One part, or one reel of wire, to be put into the drawer or into a kit. @param source of the guard on the bench */
export function createPartForm(
  source: () => BuildSource | undefined,
  into: FormField,
  add: (entry: NewEntry) => Promise<void>,
): HTMLElement {
  const sort = formChoice<Sort>("sort", "What", SORTS);
  const value = formText("value", "Value", "250k");
  const taper = formChoice("taper", "Taper", TAPERS);
  const make = formChoice("make", "Made of", [
    { value: "", label: "not known" },
    ...DIELECTRICS.map(({ name, title }) => ({ value: name, label: title })),
  ]);
  const type = formChoice(
    "type",
    "Which switch",
    Object.entries(SWITCH_WORDS).map(([each, label]) => ({ value: each, label })),
  );
  const wireKind = formChoice(
    "kind",
    "Kind",
    WIRE_KINDS.map((each) => ({ value: each, label: each })),
  );
  const colour = formText("colour", "Colour", "", "black");
  const metres = formText("length", "Length on the reel", "", "2m");
  const count = formText("count", "How many", "1");
  const measured = formText("measured", "Measured, each", "", "21.3n, 22.1n");
  const price = formText("price", "Price of one", "", "4.50");
  const pushPull = h("input", { type: "checkbox", id: freshId("push-pull") });
  const pulled = h("label", { class: "tick", for: pushPull.id }, pushPull, " with a push-pull switch");
  const pickupId = freshId("pickup");
  const pickup = h("select", { id: pickupId });
  const pickupField = h("div", { class: "field" }, h("label", { for: pickupId }, "Which pickup"), pickup);
  const shownFor: readonly (readonly [HTMLElement, readonly Sort[]])[] = [
    [value.element, ["pot", "cap", "resistor"]],
    [taper.element, ["pot"]],
    [pulled, ["pot"]],
    [make.element, ["cap"]],
    [pickupField, ["pickup"]],
    [type.element, ["switch"]],
    [wireKind.element, ["wire"]],
    [colour.element, ["wire"]],
    [metres.element, ["wire"]],
    [count.element, ["pot", "cap", "resistor", "pickup", "switch", "jack"]],
    [into.element, ["pot", "cap", "resistor", "pickup", "switch", "jack"]],
    [measured.element, ["pot", "cap", "resistor"]],
  ];
  const show = () => {
    for (const [element, sorts] of shownFor) element.hidden = !sorts.includes(sort.read());
    price.element.querySelector("label")!.textContent = sort.read() === "wire" ? "Price of a metre" : "Price of one";
    if (sort.read() !== "pickup") return;
    const choices = pickupChoices(source());
    pickup.replaceChildren(...choices.map((each) => h("option", { value: each.value }, each.label)));
  };
  sort.element.addEventListener("change", show);
  show();
  const reelOf = (): NewEntry | undefined => {
    if (
      !areRight([
        [metres, quantityFault(metres.read(), "length")],
        [price, priceFault(price.read())],
      ])
    )
      return undefined;
    const said = { ...(colour.read() ? { colour: colour.read() } : {}), ...priced() };
    return { kind: "reel", reel: { kind: wireKind.read() as "cloth", length: metres.read(), ...said } };
  };
  const priced = () => (price.read() === "" ? {} : { price: Number(price.read()) });
  const partOf = (): object => {
    switch (sort.read()) {
      case "pot":
        return {
          kind: "pot",
          resistance: value.read(),
          taper: taper.read(),
          ...(pushPull.checked ? { drives: "dpdt" } : {}),
        };
      case "cap":
        return { kind: "cap", capacitance: value.read(), ...(make.read() ? { dielectric: make.read() } : {}) };
      case "resistor":
        return { kind: "resistor", resistance: value.read() };
      case "pickup":
        return pickupPart(pickup.value, source());
      case "switch":
        return { kind: "switch", type: type.read() };
      default:
        return { kind: "jack" };
    }
  };
  const itemOf = (): NewEntry | undefined => {
    const dimension = VALUES[sort.read() as keyof typeof VALUES];
    const values = dimension ? measuredIn(measured.read()) : [];
    const isRight = areRight([
      [value, dimension && quantityFault(value.read(), dimension)],
      [count, countFault(count.read(), 0)],
      [price, priceFault(price.read())],
      [
        measured,
        values.map((each) => quantityFault(each, dimension)).find((fault) => fault !== undefined) ??
          (values.length > Number(count.read()) ? `has ${values.length} values of ${count.read()} parts` : undefined),
      ],
    ]);
    if (!isRight) return undefined;
    const item = {
      part: partOf(),
      count: Number(count.read()),
      ...(values.length > 0 ? { measured: values } : {}),
      ...priced(),
    };
    return { kind: "item", item: item as Omit<KeptItem, "id"> };
  };
  const submit = async (event: Event) => {
    event.preventDefault();
    const entry = sort.read() === "wire" ? reelOf() : itemOf();
    if (!entry) return;
    await add(entry);
    // What was measured or paid is this part's alone.
    for (const { element } of [measured, price]) element.querySelector("input")!.value = "";
  };
  return h(
    "form",
    { class: "drawer-form", onsubmit: submit, "aria-label": "Put into the drawer" },
    sort.element,
    pickupField,
    value.element,
    taper.element,
    make.element,
    type.element,
    wireKind.element,
    colour.element,
    metres.element,
    count.element,
    measured.element,
    price.element,
    into.element,
    pulled,
    h("button", { type: "submit" }, "Put it in"),
  );
}
