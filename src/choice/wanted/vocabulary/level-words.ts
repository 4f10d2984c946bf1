import { COMMON_PRACTICE, UNDER_ONE_COIL } from "./sources.ts";
import type { TradeWord } from "./trade-word.ts";

/** Words for how loud a sound is, and its hum. */
export const LEVEL_WORDS = {
  "hum-free": {
    also: ["no hum", "without hum", "humless", "humbucking", "hum cancelling", "noiseless", "noise free", "quiet"],
    meaning: "hums 10 dB less than one usual single coil, as its coils cancel",
    targets: [{ figure: "hum", high: -10 }],
    source: UNDER_ONE_COIL,
  },
  loud: {
    also: ["hot", "strong", "boost", "boosted", "powerful"],
    meaning: "plainly louder than the guard's mean",
    targets: [{ figure: "loudness", low: 2 }],
    source: COMMON_PRACTICE,
  },
  soft: {
    also: ["softer", "low output", "weak"],
    meaning: "plainly softer than the guard's mean",
    targets: [{ figure: "loudness", high: -2 }],
    source: COMMON_PRACTICE,
  },
  balanced: {
    also: ["even", "equally loud", "same level", "level"],
    meaning: "about as loud as the guard's mean; said of no position, of all of them",
    targets: [{ figure: "loudness", low: -2, high: 2 }],
    source: COMMON_PRACTICE,
  },
} as const satisfies Readonly<Record<string, TradeWord>>;
