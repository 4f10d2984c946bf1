import { contradictionsIn } from "../../../choice/wanted/contradictions.ts";
import { FIGURE_NAMES, FIGURES } from "../../../choice/wanted/figures.ts";
import { parseWishes } from "../../../choice/wanted/parse-wishes.ts";
import { tradeWord, WORD_NAMES } from "../../../choice/wanted/vocabulary/words.ts";
import type { WishesAnswer, WishesBody } from "../../../contract/wishes.ts";
import type { Job } from "../../work/job.ts";

export const wishesJob = {
  read: ({ text }: WishesBody): string => text,
  run: (text: string): WishesAnswer => {
    const { noPlaces: _, ...parsed } = parseWishes(text);
    return {
      ...parsed,
      contradictions: contradictionsIn(parsed.wishes),
      words: WORD_NAMES.map((word) => ({ word, ...tradeWord(word) })),
      figures: FIGURE_NAMES.map((figure) => ({ figure, ...FIGURES[figure] })),
    };
  },
  size: () => "small",
  gate: "render",
} satisfies Job<string, WishesAnswer>;
