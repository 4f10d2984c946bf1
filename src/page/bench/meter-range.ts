import { freshId, h } from "../dom/element.ts";

/** Which range the person's meter stands on. */
export interface MeterRange {
  readonly element: HTMLElement;
  /** The end of the range in ohms; undefined where the meter chooses its range by itself. */
  read(): number | undefined;
}

const RANGES = [
  { value: "", label: "chosen by the meter (auto)" },
  { value: "20000", label: "20 kΩ" },
  { value: "200000", label: "200 kΩ" },
  { value: "2000000", label: "2 MΩ" },
];

/** Asks for the meter's range, since OL on a range says no more than "above its end". */
export function createMeterRange(): MeterRange {
  const id = freshId("meter-range");
  const select = h(
    "select",
    { id },
    RANGES.map(({ value, label }) => h("option", { value }, label)),
  );
  return {
    element: h("div", { class: "field" }, h("label", { for: id }, "Meter range; OL means above it"), select),
    read: () => (select.value === "" ? undefined : Number(select.value)),
  };
}
