import { BRIGHTNESS_STUDIES, COMMON_PRACTICE } from "./sources.ts";
import type { TradeWord } from "./trade-word.ts";

/** Words for a sound's colour. Numbers are for a guard on a usual lead and amplifier. */
export const TONE_WORDS = {
  glassy: {
    also: ["glass", "chimey", "chiming", "chime", "sparkling", "sparkly", "bell like", "jangly", "shimmering"],
    meaning: "a tall peak high up",
    targets: [
      { figure: "peakFrequency", low: 4000, high: 7500 },
      { figure: "peakHeight", low: 4 },
    ],
    source: COMMON_PRACTICE,
  },
  quacky: {
    also: ["quack", "quacking", "in between"],
    meaning: "two pickups side by side, with a clear peak",
    targets: [
      { figure: "together", low: 2, high: 2 },
      { figure: "peakFrequency", low: 3500 },
      { figure: "peakHeight", low: 2 },
    ],
    source: COMMON_PRACTICE,
  },
  bright: {
    also: ["brilliant", "clear", "open", "crisp", "airy", "trebly"],
    meaning: "the curve reaches far up",
    targets: [{ figure: "cutoff", low: 6000 }],
    source: BRIGHTNESS_STUDIES,
  },
  biting: {
    also: ["bite", "cutting", "sharp", "aggressive", "edgy", "twang", "twangy", "snap", "snappy", "spanky"],
    meaning: "a tall peak where the ear is most sensitive",
    targets: [
      { figure: "peakFrequency", low: 2500, high: 4200 },
      { figure: "peakHeight", low: 4 },
    ],
    source: COMMON_PRACTICE,
  },
  smooth: {
    also: ["soft treble", "sweet", "creamy", "buttery", "fluty"],
    meaning: "hardly a peak",
    targets: [{ figure: "peakHeight", high: 2 }],
    source: COMMON_PRACTICE,
  },
  warm: {
    also: ["round", "mellow", "woody"],
    meaning: "lows in front, treble gently taken back",
    targets: [
      { figure: "cutoff", low: 2500, high: 5200 },
      { figure: "peakHeight", high: 3 },
      { figure: "lows", low: 2 },
    ],
    source: COMMON_PRACTICE,
  },
  dark: {
    also: ["dull", "muffled", "woolly", "jazz", "jazzy"],
    meaning: "the curve ends early and without a peak",
    targets: [
      { figure: "cutoff", high: 3500 },
      { figure: "peakHeight", high: 2 },
    ],
    source: BRIGHTNESS_STUDIES,
  },
  "not muddy": {
    also: ["no mud", "without mud", "not muffled", "not woolly", "articulate", "defined"],
    meaning: "what its lows leave of the treble is heard, at the neck too",
    targets: [
      { figure: "treble", low: -16 },
      { figure: "cutoff", low: 4000 },
    ],
    source: COMMON_PRACTICE,
  },
  "not harsh": {
    also: ["not shrill", "not piercing", "not brittle", "not strident"],
    meaning: "no tall peak",
    targets: [{ figure: "peakHeight", high: 4 }],
    source: COMMON_PRACTICE,
  },
  fat: {
    also: ["thick", "full", "beefy", "meaty", "chunky", "big"],
    meaning: "more middle than treble, and no softer than the rest of the guard",
    targets: [
      { figure: "treble", high: -11 },
      { figure: "cutoff", high: 5200 },
      { figure: "loudness", low: -1 },
    ],
    source: COMMON_PRACTICE,
  },
  thin: {
    also: ["skinny", "lean", "funky"],
    meaning: "little bass, and softer than the rest of the guard",
    targets: [
      { figure: "lows", high: 0.5 },
      { figure: "loudness", high: -2 },
    ],
    source: COMMON_PRACTICE,
  },
  nasal: {
    also: ["honky", "honking", "hollow"],
    meaning: "neither lows nor a lack of treble: what two pickups out of phase leave",
    targets: [
      { figure: "lows", high: 0.5 },
      { figure: "treble", low: -8 },
    ],
    source: COMMON_PRACTICE,
  },
} as const satisfies Readonly<Record<string, TradeWord>>;
