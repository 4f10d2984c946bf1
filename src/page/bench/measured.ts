import { fits, readShown, type Shown } from "../../bench/meter/shown.ts";
import { QuantityError } from "../../build-file/quantity.ts";
import type { MeterReadingAnswer } from "../../contract/bench/bench.ts";
import type { MeasuredRequest } from "../../contract/diagnose.ts";
import { freshId, h } from "../dom/element.ts";
import type { MeterRange } from "./meter-range.ts";

type Verdict = "" | "fits" | "does not fit";

/** What was measured on one guard, as it was written, kept by reading while the table is drawn anew. */
export type Written = Map<string, string>;

function keyOf({ label, between }: MeterReadingAnswer): string {
  return `${label}|${between.join("|")}`;
}

/** A field for what the meter showed, which says whether that fits. */
export function measuredField(
  reading: MeterReadingAnswer,
  range: MeterRange,
  written: Written,
): { element: HTMLElement; read: () => MeasuredRequest | undefined } {
  const key = keyOf(reading);
  const id = freshId("measured");
  const verdict = h("span", { class: "measured-verdict", id });
  const input = h("input", {
    type: "text",
    class: "short",
    value: written.get(key) ?? "",
    "aria-label": `Measured: ${reading.label}`,
    "aria-describedby": id,
  });
  const parse = (): Shown | undefined => readShown(input.value, range.read());
  const tell = (text: Verdict | string, isFault: boolean) => {
    verdict.textContent = text;
    verdict.classList.toggle("misfit", text === "does not fit");
    input.removeAttribute("aria-invalid");
    if (isFault) input.setAttribute("aria-invalid", "true");
  };
  const check = () => {
    written.set(key, input.value);
    try {
      const shown = parse();
      if (shown === undefined) tell("", false);
      else tell(fits(reading, shown) ? "fits" : "does not fit", false);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      tell(error.message, true);
    }
  };
  input.addEventListener("input", check);
  range.element.addEventListener("change", check);
  check();
  return {
    element: h("div", { class: "measured" }, input, verdict),
    read: () => {
      const shown = parse();
      if (shown === undefined) return undefined;
      const { label, between, settings, sweep } = reading;
      return { label, between, settings, ...(sweep ? { sweep } : {}), ...shown };
    },
  };
}
