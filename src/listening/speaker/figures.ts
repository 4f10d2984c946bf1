/** The speaker as its analogue filter: three sections in a row. */
export interface SpeakerFigures {
  /** Cone and cabinet: a high-pass of second order. */
  readonly highPass: { readonly hertz: number; readonly q: number };
  /** Where the cone breaks up: a broad bell. */
  readonly presence: { readonly hertz: number; readonly q: number; readonly decibels: number };
  /** Above the break-up: a Butterworth low-pass, 6 dB an octave for each order. */
  readonly lowPass: { readonly hertz: number; readonly order: number };
}

/**
 * A 12-inch guitar speaker in an open-backed cabinet, on its axis. Common practice, no single source: data sheets of such speakers
 * agree on a resonance of 80 to 130 Hz, a rise of 3 to 6 dB between 2 and 4 kHz, and an end about 5 kHz, 24 dB an octave or steeper.
 */
export const SPEAKER: SpeakerFigures = {
  highPass: { hertz: 100, q: 1 },
  presence: { hertz: 3000, q: 1, decibels: 4 },
  lowPass: { hertz: 5000, order: 5 },
};

export const SPEAKER_BASIS =
  "common practice, no single source: data sheets of 12-inch guitar speakers agree on a resonance of 80 to 130 Hz, a rise of 3 to " +
  "6 dB between 2 and 4 kHz, and an end about 5 kHz, 24 dB an octave or steeper";
