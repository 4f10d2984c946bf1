import { parseQuantity, QuantityError } from "../../../build-file/quantity.ts";
import type { DrawerRequest } from "../../../contract/bench/bench.ts";
import { MAX_DRAWER_QUANTITY } from "../../../limits.ts";
import { h } from "../../dom/element.ts";
import { formChoice, formText } from "../../fields/form-fields.ts";

type Part = DrawerRequest["part"];

interface Sort {
  readonly label: string;
  readonly dimension: "capacitance" | "resistance";
  /** The build file's own bound. */
  readonly max: number;
  readonly part: (value: string) => Part;
}

const SORTS = {
  cap: {
    label: "cap",
    dimension: "capacitance",
    max: 1e-4,
    part: (capacitance) => ({ kind: "cap", capacitance }),
  },
  resistor: {
    label: "resistor",
    dimension: "resistance",
    max: 1e9,
    part: (resistance) => ({ kind: "resistor", resistance }),
  },
  audio: {
    label: "pot, audio (A)",
    dimension: "resistance",
    max: 1e8,
    part: (resistance) => ({ kind: "pot", resistance, taper: "audio" }),
  },
  linear: {
    label: "pot, linear (B)",
    dimension: "resistance",
    max: 1e8,
    part: (resistance) => ({ kind: "pot", resistance, taper: "linear" }),
  },
} as const satisfies Record<string, Sort>;

type SortName = keyof typeof SORTS;

/** Why a value is none of its sort; undefined where it is one. */
function complaint(text: string, { dimension, max }: Sort): string | undefined {
  try {
    const { value } = parseQuantity(text, dimension);
    return value > 0 && value <= max ? undefined : "expected a value above 0, as parts are made";
  } catch (error) {
    if (error instanceof QuantityError) return error.message;
    throw error;
  }
}

/** Puts into the drawer what the build has no line for. */
export function createAddToDrawer(add: (item: DrawerRequest) => void): HTMLElement {
  const options = (Object.keys(SORTS) as SortName[]).map((value) => ({ value, label: SORTS[value].label }));
  const sort = formChoice<SortName>("kind", "Also in the drawer", options);
  const value = formText("value", "Value", "", "47n");
  const quantity = formText("quantity", "How many", "1");
  const submit = (event: Event) => {
    event.preventDefault();
    const chosen = SORTS[sort.read()];
    const count = Number(quantity.read());
    const isCount = Number.isInteger(count) && count >= 1 && count <= MAX_DRAWER_QUANTITY;
    const fault = complaint(value.read(), chosen);
    value.showFault(fault);
    quantity.showFault(isCount ? undefined : `expected a whole number from 1 to ${MAX_DRAWER_QUANTITY}`);
    if (fault === undefined && isCount) add({ part: chosen.part(value.read()), quantity: count });
  };
  return h(
    "form",
    { class: "row add-row no-print", onsubmit: submit, "aria-label": "Also in the drawer" },
    sort.element,
    value.element,
    quantity.element,
    h("button", { type: "submit", "data-drawer": "add" }, "Add"),
  );
}
