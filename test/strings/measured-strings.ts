/**
 * A solid-body guitar measured from 234 recorded notes, frets 0 to 12, plectrum: set of Ch. Kehling, J. Abeßer, Ch. Dittmar and
 * G. Schuller, DAFx-14 (2014); recordings in the repository mogeadis/GS-Detector. Gauges inferred from the plain strings, whose B
 * the formula then gives within 6 %; scale 648 mm.
 */
export interface MeasuredString {
  readonly openFrequencyHz: number;
  readonly gaugeInches: number;
  readonly wound: boolean;
  /** B of the open string, from all frets by B0·2^(m/6). */
  readonly inharmonicity: number;
  /** Hz of a band's middle and the median seconds that partials in it took to fall 60 dB. */
  readonly fallTimes: readonly (readonly [hertz: number, seconds: number])[];
}

const BANDS = [95, 150, 220, 320, 465, 675, 975, 1400, 2025, 2900, 4100, 5650];
const times = (first: number, seconds: readonly number[]) =>
  seconds.map((each, index) => [BANDS[first + index]!, each] as const);

/** From the highest string to the lowest. */
export const MEASURED_STRINGS: readonly MeasuredString[] = [
  {
    openFrequencyHz: 329.63,
    gaugeInches: 0.009,
    wound: false,
    inharmonicity: 1.14e-5,
    fallTimes: times(3, [4.6, 5.9, 4.4, 4.1, 3.4, 3.3, 3.1, 2.4, 2.1]),
  },
  {
    openFrequencyHz: 246.94,
    gaugeInches: 0.011,
    wound: false,
    inharmonicity: 2.79e-5,
    fallTimes: times(3, [7.3, 5.1, 5.9, 5.4, 4.1, 3.3, 3.7, 2.7, 2.1]),
  },
  {
    openFrequencyHz: 196,
    gaugeInches: 0.016,
    wound: false,
    inharmonicity: 9.72e-5,
    fallTimes: times(2, [11.7, 5.0, 8.3, 4.8, 3.6, 2.7, 3.4, 2.6, 1.8, 1.2]),
  },
  {
    openFrequencyHz: 146.83,
    gaugeInches: 0.024,
    wound: true,
    inharmonicity: 7.57e-5,
    fallTimes: times(1, [5.1, 12.4, 9.4, 6.5, 4.2, 2.8, 2.0, 1.3, 0.7]),
  },
  {
    openFrequencyHz: 110,
    gaugeInches: 0.032,
    wound: true,
    inharmonicity: 1.11e-4,
    fallTimes: times(0, [18.0, 5.8, 9.9, 10.0, 5.8, 2.5, 1.7, 1.0, 0.5]),
  },
  {
    openFrequencyHz: 82.41,
    gaugeInches: 0.042,
    wound: true,
    inharmonicity: 2.23e-4,
    fallTimes: times(0, [11.6, 7.4, 8.1, 5.6, 2.6, 1.7, 1.1, 0.7]),
  },
];
