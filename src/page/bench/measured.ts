import { isLoneOne } from "../../bench/meter/own/display.ts";
import type { OwnMeter } from "../../bench/meter/own/own-meter.ts";
import { fits, NO_GRANT, readShown, type Shown } from "../../bench/meter/shown.ts";
import { QuantityError } from "../../build-file/quantity.ts";
import type { MeterReadingAnswer } from "../../contract/bench/bench.ts";
import type { MeasuredRequest } from "../../contract/diagnose.ts";
import { freshId, h } from "../dom/element.ts";
import type { MeterRange } from "./meter/meter-range.ts";

type Verdict = "" | "fits" | "does not fit";

/** What was measured on one guard, as it was written, kept by reading while the table is drawn anew. */
export type Written = Map<string, string>;

function keyOf({ label, between }: MeterReadingAnswer): string {
  return `${label}|${between.join("|")}`;
}

/** What to write where a number stands as the display has it, without the display's unit; "" where it is no such slip. */
function withUnit(text: string, reading: MeterReadingAnswer): string {
  const letter = reading.meter?.unit.replace("Ω", "") ?? "";
  if (letter === "" || !/^[\d.]+$/.test(text)) return "";
  const shown = readShown(`${text}${letter}`);
  return shown && fits(reading, shown, NO_GRANT) ? `${text}${letter}` : "";
}

export interface MeterAtHand {
  readonly range: MeterRange;
  /** The person's own, where they said which. */
  readonly meter: OwnMeter | undefined;
}

/** A field for what the meter showed, which says whether that fits. */
export function measuredField(
  reading: MeterReadingAnswer,
  { range, meter }: MeterAtHand,
  written: Written,
): { element: HTMLElement; read: () => MeasuredRequest | undefined; written: () => string } {
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
  const parse = (): Shown | undefined => {
    const end = range.read(reading);
    const shown = readShown(input.value, end);
    const isOver = meter && shown && "ohms" in shown && isLoneOne(meter, end, shown.ohms);
    return isOver ? { above: end! } : shown;
  };
  const verdictOn = (shown: Shown): string => {
    if (fits(reading, shown, meter ? NO_GRANT : undefined)) return "fits";
    const meant = withUnit(input.value.trim(), reading);
    return meant === "" ? "does not fit" : `does not fit as ohms; write ${meant}`;
  };
  const tell = (text: Verdict | string, isFault: boolean) => {
    verdict.textContent = text;
    verdict.classList.toggle("misfit", text.startsWith("does not fit"));
    input.removeAttribute("aria-invalid");
    if (isFault) input.setAttribute("aria-invalid", "true");
  };
  const check = () => {
    written.set(key, input.value);
    try {
      const shown = parse();
      if (shown === undefined) tell("", false);
      else tell(verdictOn(shown), false);
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
      const ohms = "ohms" in shown ? shown.ohms : null;
      const stoodOn = ohms === null ? undefined : range.holding(reading, ohms);
      return {
        ...{ label, between, settings },
        ...(sweep ? { sweep } : {}),
        ...shown,
        ...(stoodOn === undefined ? {} : { range: stoodOn }),
      };
    },
    written: () => input.value.trim(),
  };
}
