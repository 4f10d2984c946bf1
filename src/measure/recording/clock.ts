import { MARKS } from "../signal/layout.ts";

/** Where each pass lies in a recording, and how the recorder's clock runs against the player's. */
export interface Clock {
  /** Seconds of the recording to one second as played. */
  readonly stretch: number;
  /** When each mark begins, in seconds of the recording. */
  readonly marks: readonly number[];
  /** For each body, whether no sample was lost between the marks around it. */
  readonly whole: readonly boolean[];
}

/** Half of one sample at 48 kHz, which an input without the player's clock may lose; two marks are found to within a tenth of this. */
const SAME_SECONDS = 1e-5;

const median = (values: readonly number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** @returns undefined where no two intervals between marks agree. */
export function clockOf(marks: readonly number[]): Clock | undefined {
  const played = MARKS.slice(1).map((mark, i) => mark - MARKS[i]!);
  const recorded = marks.slice(1).map((mark, i) => mark - marks[i]!);
  const ratios = recorded.map((seconds, i) => seconds / played[i]!);
  const middle = median(ratios);
  const whole = ratios.map((ratio, i) => Math.abs(ratio - middle) * played[i]! < SAME_SECONDS);
  const kept = whole.filter(Boolean).length;
  if (kept < 2) return undefined;
  const sumOf = (values: readonly number[]) => values.reduce((sum, each, i) => sum + (whole[i] ? each : 0), 0);
  return { stretch: sumOf(recorded) / sumOf(played), marks, whole };
}

/** Seconds of the signal as played, at a sample of the recording, counted from the mark before a body. */
export function playedSeconds({ stretch, marks }: Clock, body: number, recordedSeconds: number): number {
  return MARKS[body]! + (recordedSeconds - marks[body]!) / stretch;
}

/** The other way round. */
export function recordedSeconds({ stretch, marks }: Clock, body: number, seconds: number): number {
  return marks[body]! + (seconds - MARKS[body]!) * stretch;
}
