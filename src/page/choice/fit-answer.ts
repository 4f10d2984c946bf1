import { showQuantity } from "../../build-file/show-quantity.ts";
import type { Dimension } from "../../build-file/units.ts";
import type { FittedAnswer, RangeAnswer } from "../../contract/fit.ts";
import { h, s } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";

function dimensionOf(name: string): Dimension {
  if (name.includes("nductance")) return "inductance";
  return name.includes("apacitance") ? "capacitance" : "resistance";
}

/** "loss.0.inductance" as a person says it; what has one name is called by it. */
function spoken(name: string): string {
  const [, number, field] = /^loss\.(\d+)\.(\w+)$/.exec(name) ?? [];
  if (number !== undefined) return `core loss ${Number(number) + 1}, ${field}`;
  return name === "loss" ? "core loss" : name;
}

const SIZE = { width: 480, height: 120 };

/** Residuals in percent over frequency: scattered about zero where the model fits, in a wave where it does not. */
function residualPlot({ residuals }: FittedAnswer): SVGElement {
  const frequencies = residuals.map((each) => Math.log(each.frequency));
  const [from, to] = [Math.min(...frequencies), Math.max(...frequencies)];
  const largest = Math.max(1e-9, ...residuals.map((each) => Math.abs(each.error)));
  const x = (hertz: number) => 10 + ((Math.log(hertz) - from) / (to - from || 1)) * (SIZE.width - 20);
  const y = (error: number) => SIZE.height / 2 - (error / largest) * (SIZE.height / 2 - 12);
  const marks = residuals.map(({ of, frequency, error }) =>
    of === "phase"
      ? s("path", { d: `M${x(frequency) - 3} ${y(error)}h6`, class: "residual-phase" })
      : s("circle", { cx: x(frequency), cy: y(error), r: 3, class: "residual" }),
  );
  const label = `Residuals, measured minus fitted, within ±${(largest * 100).toPrecision(2)} %`;
  return s(
    "svg",
    { viewBox: `0 0 ${SIZE.width} ${SIZE.height}`, class: "residuals", role: "img", "aria-label": label },
    s("title", {}, label),
    s("path", { d: `M0 ${SIZE.height / 2}H${SIZE.width}`, class: "residual-axis" }),
    marks,
  );
}

/** Fitted values with their 95 % ranges. */
export function fittedView(fit: FittedAnswer, put: HTMLElement): HTMLElement {
  const rows = fit.values.map(({ name, value, low, high }) => {
    const dimension = dimensionOf(name);
    return [
      spoken(name),
      showQuantity(value, dimension),
      `${showQuantity(low, dimension)} to ${showQuantity(high, dimension)}`,
    ];
  });
  return h(
    "div",
    { class: "stack" },
    plainTable("The coil", ["Value", "Best", "95 % within"], rows),
    h("p", { class: "hint" }, "Residuals over frequency: dots are sizes, dashes are angles."),
    residualPlot(fit),
    fit.notes.map((note) => h("p", { class: "hint" }, note)),
    put,
  );
}

/** What a DC resistance alone allows: ranges, no values. */
export function rangeView({ ranges, basis }: RangeAnswer): HTMLElement {
  const rows = (["inductance", "capacitance", "loss"] as const).map((name) => {
    const dimension = dimensionOf(name);
    const { low, high } = ranges[name];
    return [name, `${showQuantity(low, dimension)} to ${showQuantity(high, dimension)}`];
  });
  return h(
    "div",
    { class: "stack" },
    plainTable("A resistance alone leaves this open", ["Value", "Somewhere within"], rows),
    h("p", { class: "hint" }, basis),
  );
}
