import type { Range } from "./figures.ts";
import { tradeWord, type WordName } from "./vocabulary/words.ts";

/** Where something is wished for. */
export type Where =
  | { readonly kind: "position"; readonly position: number }
  /** In a setting in which these pickups sound and no other. */
  | { readonly kind: "pickups"; readonly pickups: readonly string[] }
  /** In every position of the main switch; the worst counts. */
  | { readonly kind: "everywhere" }
  /** In one setting or another; the best counts. */
  | { readonly kind: "anywhere" };

/** One word, with its targets as they are to be reached. */
export interface Ask {
  readonly word: WordName;
  readonly targets: readonly Range[];
}

/** What is wished for in one place. */
export interface Wish {
  readonly where: Where;
  readonly asks: readonly Ask[];
}

/** @param targets in place of the word's own */
export function askFor(word: WordName, targets: readonly Range[] = tradeWord(word).targets): Ask {
  return { word, targets };
}

export function whereWords(where: Where): string {
  switch (where.kind) {
    case "position":
      return `position ${where.position}`;
    case "pickups":
      return `the ${where.pickups.join(" + ")}`;
    case "everywhere":
      return "every position";
    case "anywhere":
      return "some position";
  }
}

/** The same for wishes of one place. */
export function whereKey(where: Where): string {
  return where.kind === "pickups" ? [...where.pickups].sort().join("+") : whereWords(where);
}
