import { percentText } from "../blind/guessing.ts";
import { h } from "../dom/element.ts";
import { rangeText } from "./ohms.ts";

export interface Diagnosis {
  readonly explanations: readonly {
    readonly message: string;
    readonly faults: readonly { readonly kind: string }[];
    /** 0 to 1: how well it explains the readings, and how likely it is of all that explain them. */
    readonly fit: number;
    readonly probability: number;
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

/** Kinds of answer that explain nothing, and so have neither fit nor probability to show. */
const NO_EXPLANATIONS: readonly string[] = ["unexplained", "nothing-measured"];

function explanationItem({
  faults,
  message,
  fit,
  probability,
  sameAs,
}: Diagnosis["explanations"][number]): HTMLElement {
  const isNone = faults.some(({ kind }) => NO_EXPLANATIONS.includes(kind));
  const figures = `${percentText(probability)} likely, fits the readings to ${percentText(fit)}: `;
  return h(
    "li",
    {},
    h("p", {}, !isNone && h("b", {}, figures), message),
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
