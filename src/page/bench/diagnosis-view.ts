import { percentText } from "../blind/guessing.ts";
import { h } from "../dom/element.ts";
import { rangeText } from "./ohms.ts";

export interface Diagnosis {
  readonly explanations: readonly {
    readonly message: string;
    readonly fit: number;
    readonly sameAs: readonly { readonly message: string }[];
  }[];
  readonly nextMeasurement: NextCheck | null;
}

type NextCheck =
  | {
      readonly kind: "meter";
      readonly label: string;
      readonly between: readonly [string, string];
      readonly outcomes: readonly { readonly low: number | null; readonly high: number | null }[];
    }
  | { readonly kind: "listen"; readonly label: string };

function nextText(next: NextCheck): string {
  if (next.kind === "listen") return `Listen next: ${next.label}.`;
  const outcomes = next.outcomes.map(rangeText).join(", or ");
  return `Measure next: ${next.label}, from ${next.between.join(" to ")}. It tells the leading explanations apart: ${outcomes}.`;
}

const SHOWN = 5;

function explanationItem({ message, fit, sameAs }: Diagnosis["explanations"][number]): HTMLElement {
  return h(
    "li",
    {},
    h("p", {}, h("b", {}, `${percentText(fit)}: `), message),
    sameAs.length > 0 &&
      h(
        "details",
        {},
        h("summary", {}, `Reads exactly the same: ${sameAs.length} more`),
        h(
          "ul",
          {},
          sameAs.map((each) => h("li", {}, each.message)),
        ),
      ),
  );
}

/** What may be wrong, likeliest first, and what to measure next. */
export function diagnosisView({ explanations, nextMeasurement }: Diagnosis): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    h("ol", { class: "explanations" }, explanations.slice(0, SHOWN).map(explanationItem)),
    nextMeasurement && h("p", { class: "verdict" }, nextText(nextMeasurement)),
  );
}
