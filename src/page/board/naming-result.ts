import { h } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { BOARD_KEYS } from "./board.ts";
import type { NamingTrials } from "./naming-trials.ts";
import { namingResult } from "./test-words.ts";

/** Count, chance, what it means, and which was taken for which. */
export function namingResultOf(trials: NamingTrials, names: readonly string[], isSequential: boolean): HTMLElement {
  const { count, luck, verdict } = namingResult(trials, isSequential);
  const rows = names.map((name, index) => [
    `${BOARD_KEYS[index]}: ${name}`,
    ...trials.answers[index]!.map((times) => String(times)),
  ]);
  return h(
    "div",
    { class: "blind-result stack" },
    h(
      "div",
      { role: "status" },
      h("p", { class: "big-figure" }, count),
      h("p", {}, luck),
      h("p", { class: "verdict" }, verdict),
    ),
    plainTable("Which was taken for which", ["Played", ...names.map((_, index) => `named ${BOARD_KEYS[index]}`)], rows),
  );
}
