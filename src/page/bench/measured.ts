import { QuantityError } from "../../build/quantity.ts";
import { freshId, h } from "../dom/element.ts";
import type { MeterReading } from "./bench-answer.ts";
import { readOhms, showOhms } from "./ohms.ts";

export interface Measured {
  readonly between: readonly [string, string];
  readonly settings: MeterReading["settings"];
  readonly sweep?: string;
  readonly ohms: number | null;
}

type Verdict = "" | "fits" | "does not fit";

/** What was measured, kept by reading while the table is drawn anew. */
const written = new Map<string, string>();

function keyOf({ label, between }: MeterReading): string {
  return `${label}|${between.join("|")}`;
}

/** A meter's own error and what its display wanders (common practice, no source). */
const METER_SHARE = 0.02;

function fits({ low, high }: MeterReading, ohms: number | null): boolean {
  if (ohms === null) return high === null;
  if (low === null) return false;
  return ohms >= low * (1 - METER_SHARE) - 1 && (high === null || ohms <= high * (1 + METER_SHARE) + 1);
}

/** A field for what the meter showed, which says whether that fits. */
export function measuredField(reading: MeterReading): { element: HTMLElement; read: () => Measured | undefined } {
  const key = keyOf(reading);
  const id = freshId("measured");
  const verdict = h("span", { class: "hint", id });
  const input = h("input", {
    type: "text",
    class: "short",
    value: written.get(key) ?? "",
    "aria-label": `Measured: ${reading.label}`,
    "aria-describedby": id,
    placeholder: showOhms(reading.ohms),
  });
  const parse = (): number | null | undefined => readOhms(input.value);
  const tell = (text: Verdict | string, isFault: boolean) => {
    verdict.textContent = text;
    input.toggleAttribute("aria-invalid", isFault);
    if (isFault) input.setAttribute("aria-invalid", "true");
  };
  const check = () => {
    written.set(key, input.value);
    try {
      const ohms = parse();
      if (ohms === undefined) tell("", false);
      else tell(fits(reading, ohms) ? "fits" : "does not fit", false);
    } catch (error) {
      if (!(error instanceof QuantityError)) throw error;
      tell(error.message, true);
    }
  };
  input.addEventListener("input", check);
  check();
  return {
    element: h("div", { class: "measured" }, input, verdict),
    read: () => {
      const ohms = parse();
      if (ohms === undefined) return undefined;
      const { between, settings, sweep } = reading;
      return { between, settings, ...(sweep ? { sweep } : {}), ohms };
    },
  };
}
