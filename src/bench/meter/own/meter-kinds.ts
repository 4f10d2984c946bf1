/** Who sets the range; a needle has scales of one dial in place of ranges. */
export const RANGINGS = ["auto", "manual", "needle"] as const;
export type Ranging = (typeof RANGINGS)[number];

/** What is common to meters of a kind. */
export interface MeterKind {
  /** In plain words. */
  readonly words: string;
  readonly ranging: Ranging;
  /** Steps of a full range: 2000 shows 0 to 1999. */
  readonly counts: number;
  /** The end of its highest range in ohms; of a needle, the last mark of its highest scale. */
  readonly openFrom: number;
  /** It shows this share of the reading too much or too little, and so many of its last digit; of a needle the share of its arc. */
  readonly error: { readonly share: number; readonly digits: number };
  /** Amperes through its probes held together on its lowest range; each range above drives a tenth of the one below. */
  readonly testCurrent: number;
  /** The resistance that it measures through, as a share of the range's end; of a needle, of the middle of the scale. */
  readonly sourceShare: number;
}

/** As the sheets of such meters have it (common practice, no source). */
const BY_HAND = {
  ranging: "manual",
  counts: 2000,
  error: { share: 0.01, digits: 2 },
  testCurrent: 1e-3,
  // A converter that weighs the part against a resistor of its own in series, about half the range's end (from memory).
  sourceShare: 0.5,
} as const;

/** Meters by what they are; their figures are common practice, no source, unless said otherwise. */
export const METER_KINDS = {
  "manual-2000": { ...BY_HAND, words: "range by hand, 2000 counts, to 20 MΩ (pocket meter)", openFrom: 20e6 },
  "manual-2000-to-2M": { ...BY_HAND, words: "range by hand, 2000 counts, to 2 MΩ (small pocket meter)", openFrom: 2e6 },
  "auto-6000": {
    words: "finds its range, 6000 counts",
    ranging: "auto",
    counts: 6000,
    openFrom: 60e6,
    error: { share: 0.008, digits: 3 },
    testCurrent: 0.5e-3,
    sourceShare: 0.5,
  },
  bench: {
    words: "finds its range, 50000 counts (bench meter)",
    ranging: "auto",
    counts: 50_000,
    openFrom: 50e6,
    error: { share: 0.0005, digits: 5 },
    testCurrent: 1e-3,
    // A current source, held for any part within the range.
    sourceShare: 10,
  },
  needle: {
    words: "needle (moving coil)",
    ranging: "needle",
    counts: 100,
    openFrom: 20e6,
    // Class 2.5 to 3 of the arc.
    error: { share: 0.03, digits: 0 },
    // 1.5 V through the 20 Ω in the middle of its lowest scale.
    testCurrent: 75e-3,
    sourceShare: 1,
  },
} as const satisfies Readonly<Record<string, MeterKind>>;

export type MeterKindName = keyof typeof METER_KINDS;
export const METER_KIND_NAMES = Object.keys(METER_KINDS) as [MeterKindName, ...MeterKindName[]];
