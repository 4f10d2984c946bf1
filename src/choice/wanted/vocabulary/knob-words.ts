import { COMMON_PRACTICE } from "./sources.ts";
import type { TradeWord } from "./trade-word.ts";

/** Words for what the knobs do. */
export const KNOB_WORDS = {
  "cleans up": {
    also: ["clean up", "cleaning up", "cleans up well"],
    meaning: "volume 6 drives the amplifier plainly less and keeps the treble",
    targets: [
      { figure: "volumeFall", high: -5 },
      { figure: "volumeTreble", low: -1 },
    ],
    source: COMMON_PRACTICE,
  },
  "keeps its treble": {
    also: ["keeps treble", "keeps the treble", "keeps its treble when turned down", "keeps highs", "keeps its highs"],
    meaning: "volume 6 is hardly duller than 10, and hardly thinner",
    targets: [{ figure: "volumeTreble", low: -1, high: 2 }],
    source: COMMON_PRACTICE,
  },
  "tone knob usable": {
    also: ["usable tone", "usable tone knob", "useful tone", "useful tone knob", "tone usable", "tone works"],
    meaning: "a tone knob works there, and both halves of its turn are heard",
    targets: [
      { figure: "toneTravel", low: 4 },
      { figure: "toneHalf", low: 25, high: 75 },
    ],
    source: COMMON_PRACTICE,
  },
} as const satisfies Readonly<Record<string, TradeWord>>;
