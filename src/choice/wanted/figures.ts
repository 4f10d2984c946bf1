/** What a wish is measured by in one setting of a guard. */
export interface FigureKind {
  readonly title: string;
  readonly unit: "Hz" | "dB" | "LU" | "%" | "Cam" | "pickups";
  /** Missing a wish by so much is one step: octaves where the figure is heard by ratio, else in its unit. Choices, no source. */
  readonly step: number;
  readonly by: "octaves" | "difference";
  readonly meaning: string;
}

export const FIGURES = {
  peakFrequency: {
    title: "peak at",
    unit: "Hz",
    step: 1 / 3,
    by: "octaves",
    meaning: "frequency of the curve's highest resonance, into the cable and the load",
  },
  peakHeight: {
    title: "peak's height",
    unit: "dB",
    step: 3,
    by: "difference",
    meaning: "of that resonance over the level at 200 Hz; 0 where the curve has none",
  },
  cutoff: {
    title: "cutoff",
    unit: "Hz",
    step: 1 / 3,
    by: "octaves",
    meaning: "above it the curve stays 3 dB under its level at 200 Hz",
  },
  lows: {
    title: "lows against middle",
    unit: "dB",
    step: 3,
    by: "difference",
    meaning: "what the ear's bands (ERB) from 50 to 250 Hz hold over those from 250 to 1000 Hz, in the played phrase",
  },
  treble: {
    title: "treble against middle",
    unit: "dB",
    step: 3,
    by: "difference",
    meaning: "what the ear's bands (ERB) from 2 to 5 kHz hold over those from 250 to 1000 Hz, in the played phrase",
  },
  loudness: {
    title: "loudness beside the guard's mean",
    unit: "LU",
    step: 2,
    by: "difference",
    meaning: "of the played phrase (K-weighting of ITU-R BS.1770), over the mean of the main switch's positions",
  },
  hum: {
    title: "hum",
    unit: "dB",
    step: 6,
    by: "difference",
    meaning: "what is left of it at the jack, beside one usual single coil, as in every curve and table",
  },
  volumeFall: {
    title: "level from volume 10 to 6",
    unit: "dB",
    step: 3,
    by: "difference",
    meaning: "how the curve's level at 200 Hz changes",
  },
  volumeTreble: {
    title: "treble from volume 10 to 6",
    unit: "dB",
    step: 2,
    by: "difference",
    meaning: "how the curve's bands from 2 to 5 kHz change against its level at 200 Hz",
  },
  toneTravel: {
    title: "tone knob's travel",
    unit: "Cam",
    step: 1,
    by: "difference",
    meaning: "how far the brightness moves from tone 10 to tone 0, in widths of the ear's bands (ERB numbers)",
  },
  toneHalf: {
    title: "tone knob's half",
    unit: "%",
    step: 15,
    by: "difference",
    meaning: "how much of that travel lies between tone 10 and tone 5: 50 where both halves of the turn do as much",
  },
  together: {
    title: "pickups side by side",
    unit: "pickups",
    step: 1,
    by: "difference",
    meaning: "pickups that sound together in parallel and in phase; 1 for one alone, 0 for any other way",
  },
} as const satisfies Readonly<Record<string, FigureKind>>;

export type FigureName = keyof typeof FIGURES;
export const FIGURE_NAMES = Object.keys(FIGURES) as [FigureName, ...FigureName[]];

/** Where a figure is to be; an end left out is open. */
export interface Range {
  readonly figure: FigureName;
  readonly low?: number | undefined;
  readonly high?: number | undefined;
}

/** A figure that a setting does not have is as bad as one this many steps off: worse than any that is merely far. A choice. */
export const ABSENT_STEPS = 8;

/** In steps, how far a value is outside a range; 0 within it. A value that is not there counts ABSENT_STEPS, which no value exceeds. */
export function stepsShort({ figure, low, high }: Range, value: number | null): number {
  if (value === null) return ABSENT_STEPS;
  const { by, step } = FIGURES[figure];
  const apart = (from: number, to: number) => (by === "octaves" ? Math.log2(to / from) : to - from) / step;
  const under = low === undefined ? 0 : apart(value, low);
  const over = high === undefined ? 0 : apart(high, value);
  return Math.min(ABSENT_STEPS, Math.max(0, under, over));
}
