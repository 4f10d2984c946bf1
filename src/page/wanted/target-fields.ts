import { freshId, h } from "../dom/element.ts";
import type { Target, Vocabulary } from "./wish-list.ts";

type End = "low" | "high";

const END_WORDS: Readonly<Record<End, string>> = { low: "at least", high: "at most" };

function endField(target: Target, end: End, unit: string, title: string, changed: (next: Target) => void): HTMLElement {
  const id = freshId("target");
  const value = target[end];
  const input = h("input", {
    id,
    type: "number",
    step: "any",
    class: "short",
    value: value === undefined ? "" : value,
    "aria-label": `${title}, ${END_WORDS[end]}, ${unit}`,
  });
  input.addEventListener("change", () => {
    const { [end]: _, ...rest } = target;
    const number = input.value.trim() === "" ? undefined : Number(input.value);
    changed(number === undefined || !Number.isFinite(number) ? rest : { ...rest, [end]: number });
  });
  return h("span", { class: "target-end" }, h("label", { for: id }, END_WORDS[end]), input);
}

/** What a word is measured by, each end of it to be changed. */
export function targetFields(targets: Target[], { figures }: Vocabulary, changed: () => void): HTMLElement {
  return h(
    "ul",
    { class: "targets" },
    targets.map((target, index) => {
      const { title, unit, meaning } = figures.find(({ figure }) => figure === target.figure)!;
      const put = (next: Target) => {
        targets[index] = next;
        changed();
      };
      return h(
        "li",
        {},
        h("b", {}, title),
        ` (${unit}) `,
        endField(target, "low", unit, title, put),
        endField(target, "high", unit, title, put),
        h("span", { class: "hint" }, meaning),
      );
    }),
  );
}

/** "4000 to 7500 Hz", "at least 4 dB". */
export function targetText({ figure, low, high }: Target, { figures }: Vocabulary): string {
  const { title, unit } = figures.find((each) => each.figure === figure)!;
  const shown = (value: number) => `${String(Number(value.toPrecision(4))).replace("-", "−")} ${unit}`;
  if (low !== undefined && high !== undefined)
    return `${title} ${low === high ? shown(low) : `${shown(low)} to ${shown(high)}`}`;
  if (low !== undefined) return `${title} at least ${shown(low)}`;
  return high === undefined ? `${title} as it comes` : `${title} at most ${shown(high)}`;
}
