import type { KeptItem, KeptReel } from "../../drawer/kept-drawer.ts";
import { h } from "../dom/element.ts";
import { type FormField, formText } from "../fields/form-fields.ts";
import type { BuildSource } from "../state/reading.ts";
import { createPartFields, VALUES } from "./form/part-fields.ts";
import { createReelFields } from "./form/reel-fields.ts";
import {
  areRight,
  countFault,
  measuredFault,
  measuredIn,
  priceFault,
  priceIn,
  quantityFault,
  trackFault,
} from "./form/value-faults.ts";

export type NewEntry =
  | { readonly kind: "item"; readonly item: Omit<KeptItem, "id"> }
  | { readonly kind: "reel"; readonly reel: Omit<KeptReel, "id"> };

/** One part, or one reel of wire, to be put into the drawer or into a kit. @param source of the guard on the bench */
export function createPartForm(
  source: () => BuildSource | undefined,
  into: FormField,
  add: (entry: NewEntry) => Promise<void>,
): HTMLElement {
  const fields = createPartFields(source);
  const reel = createReelFields();
  const count = formText("count", "How many", "1");
  const measured = formText("measured", "Measured, each", "", "21.3n, 22.1n");
  const price = formText("price", "Price of one", "", "4.50");
  const { sort, value } = fields;
  const isWire = () => sort.read() === "wire";

  const show = () => {
    fields.show();
    reel.show(isWire());
    for (const { element } of [count, into]) element.hidden = isWire();
    measured.element.hidden = VALUES[sort.read()] === undefined;
    price.element.querySelector("label")!.textContent = isWire() ? "Price of a metre" : "Price of one";
  };
  sort.element.addEventListener("change", show);
  show();

  const priced = () => (price.read() === "" ? {} : { price: priceIn(price.read()) });
  const reelOf = (): NewEntry | undefined => {
    const isPriced = areRight([[price, priceFault(price.read())]]);
    const said = reel.read();
    return said && isPriced ? { kind: "reel", reel: { ...said, ...priced() } } : undefined;
  };
  const itemOf = (): NewEntry | undefined => {
    const dimension = VALUES[sort.read()];
    const values = dimension ? measuredIn(measured.read()) : [];
    const valueFault = sort.read() === "pot" ? trackFault : quantityFault;
    const wrongCount = countFault(count.read(), 0);
    // How many values are too many is not known before the count is right.
    const most = wrongCount === undefined ? Number(count.read()) : values.length;
    const isRight = areRight([
      [value, dimension && valueFault(value.read(), dimension)],
      [count, wrongCount],
      [price, priceFault(price.read())],
      [measured, dimension && measuredFault(values, dimension, most, value.read())],
    ]);
    if (!isRight) return undefined;
    const said = { ...(values.length > 0 ? { measured: values } : {}), ...priced() };
    const item = { part: fields.part(), count: Number(count.read()), ...said };
    return { kind: "item", item: item as Omit<KeptItem, "id"> };
  };
  const submit = async (event: Event) => {
    event.preventDefault();
    const entry = isWire() ? reelOf() : itemOf();
    if (!entry) return;
    await add(entry);
    // What was measured or paid is this part's alone.
    for (const { element } of [measured, price]) element.querySelector("input")!.value = "";
  };
  return h(
    "form",
    { class: "drawer-form", onsubmit: submit, "aria-label": "Put into the drawer" },
    fields.elements,
    reel.elements,
    count.element,
    measured.element,
    price.element,
    into.element,
    h("button", { type: "submit" }, "Put it in"),
  );
}
