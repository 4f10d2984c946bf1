import { freshId, h } from "../dom/element.ts";

interface NumberSetting {
  readonly name: string;
  readonly label: string;
  readonly unit: string;
  readonly value: number;
  readonly min: number;
  readonly max: number;
}

/** A figure that the bench works with; one that cannot be is refused beside its field, and what held before holds on. */
export function createNumberSetting(spec: NumberSetting, take: (value: number) => void): HTMLElement {
  const { name, label, unit, value, min, max } = spec;
  const id = freshId(name);
  const input = h("input", { id, type: "number", min, max, step: "any", value, class: "short" });
  const fault = h("p", { class: "fault-text", id: `${id}-fault`, hidden: true });
  input.addEventListener("input", () => {
    const written = input.valueAsNumber;
    const isFine = written >= min && written <= max;
    fault.hidden = isFine;
    fault.textContent = isFine
      ? ""
      : `Expected a number from ${min} to ${max} ${unit}; the figures shown are for the last one that was.`;
    if (isFine) {
      input.removeAttribute("aria-invalid");
      input.removeAttribute("aria-describedby");
      take(written);
    } else {
      input.setAttribute("aria-invalid", "true");
      input.setAttribute("aria-describedby", fault.id);
    }
  });
  return h("div", { class: "field" }, h("label", { for: id }, label), input, fault);
}
