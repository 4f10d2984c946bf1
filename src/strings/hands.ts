/** What a hand does to the strings, throughout a phrase. */
export interface Hand {
  readonly title: string;
  readonly description: string;
  /** On the place where the phrase has its notes plucked. */
  readonly placeFactor: number;
  readonly widthMetres: number;
  readonly releaseSeconds: number;
  /** As in `Stroke`. */
  readonly slantDegrees: number;
  readonly scrapeSeconds: number;
}

/**
 * Places and widths are common practice, no source; release, slant and scrape are choices from memory. `releaseSeconds` 40 µs takes
 * 3 dB at 3.3 kHz; a scrape of 8 µs adds a noise 18 dB under the partials at 3 kHz.
 */
export const HANDS = {
  usual: {
    title: "Usual: plectrum",
    description: "a plectrum's rounded tip between the middle and the neck pickup",
    placeFactor: 1,
    widthMetres: 0.003,
    releaseSeconds: 0,
    slantDegrees: 45,
    scrapeSeconds: 8e-6,
  },
  bright: {
    title: "Bright: edge, at the bridge",
    description: "a plectrum's hard edge near the bridge, with more scrape",
    placeFactor: 0.45,
    widthMetres: 0.001,
    releaseSeconds: 0,
    slantDegrees: 35,
    scrapeSeconds: 16e-6,
  },
  dark: {
    title: "Dark: finger, near the neck",
    description: "a fingertip near the neck, broad and soft, without a scrape",
    placeFactor: 1.5,
    widthMetres: 0.02,
    releaseSeconds: 4e-5,
    slantDegrees: 55,
    scrapeSeconds: 0,
  },
} as const satisfies Readonly<Record<string, Hand>>;

export type HandName = keyof typeof HANDS;
export const HAND_NAMES = Object.keys(HANDS) as [HandName, ...HandName[]];
export const DEFAULT_HAND: HandName = "usual";
