/** A stretch of the measuring signal, in seconds from its start as played. */
export interface Stretch {
  readonly from: number;
  readonly seconds: number;
}

/** What is measured with, between two marks, and how far under the loudest it is played. */
export interface Body extends Stretch {
  readonly decibels: number;
}

/**
 * The measuring signal: marks by which its start and the recorder's clock are found, a quiet stretch that tells noise and hum,
 * and three bodies, 6 dB apart, so that one survives a clipped input and an automatic gain gives itself away.
 */
export const MARK_SECONDS = 0.1;
export const QUIET: Stretch = { from: 0.7, seconds: 0.6 };
export const MARKS: readonly number[] = [0.3, 5.8, 10.6, 15.4];
/** A third of a period of 50 Hz later each time, so that hum is not the same in all. */
export const BODIES: readonly Body[] = [
  { from: 1.4, seconds: 4, decibels: 0 },
  { from: 6.2 + 1 / 150, seconds: 4, decibels: -6 },
  { from: 11 + 2 / 150, seconds: 4, decibels: -12 },
];
export const SIGNAL_SECONDS = 16;
/** What a body may ring on into the silence before the next mark. */
export const TAIL_SECONDS = 0.3;

/** 6 dB under full scale: room for what an interface's filter adds. */
export const SIGNAL_PEAK = 0.5;
