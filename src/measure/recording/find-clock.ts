import { MARKS, SIGNAL_SECONDS } from "../signal/layout.ts";
import { type Clock, clockOf } from "./clock.ts";
import { findMarks } from "./find-marks.ts";
import { recordingFault } from "./recording-fault.ts";

/** Half a step of 16 bits: nothing was connected, or the channel is muted. */
const SILENT_UP_TO = 2 ** -16;
/** Crystals agree to 0.01 %; tape and a wrong label do not. */
const MOST_DRIFT = 0.002;
/** Less is no mistaken rate: blocks of samples are missing between all marks. */
const LEAST_MISTAKEN = 0.02;
/** Of a rate and the one that it may be taken for. */
const MISTAKEN_RATES = [48 / 44.1, 44.1 / 48, 2, 0.5, 96 / 44.1, 44.1 / 96];

const isSilent = (samples: Float32Array) => samples.every((each) => Math.abs(each) < SILENT_UP_TO);

const percent = (stretch: number) =>
  `it is ${(100 * Math.abs(stretch - 1)).toFixed(1)} % too ${stretch > 1 ? "long" : "short"}`;

function whyNone(samples: Float32Array, sampleRateHz: number, found: number, path: string) {
  const taken = MISTAKEN_RATES.find((stretch) => findMarks(samples, sampleRateHz, stretch).length === MARKS.length);
  if (taken !== undefined) return recordingFault(path, "rate", percent(taken));
  const short = samples.length < SIGNAL_SECONDS * sampleRateHz || found > 0;
  return recordingFault(path, short ? "short" : "other", `${found} of its ${MARKS.length} marks were found`);
}

/**
 * Where the signal lies in a recording.
 * @throws DATA_INSUFFICIENT: silence, another sound, cut short, at a wrong rate, or with lost samples in several places
 */
export function clockIn(samples: Float32Array, sampleRateHz: number, path: string): Clock {
  if (isSilent(samples)) throw recordingFault(path, "silence");
  const marks = findMarks(samples, sampleRateHz);
  if (marks.length < MARKS.length) throw whyNone(samples, sampleRateHz, marks.length, path);
  const clock = clockOf(marks);
  if (!clock) throw recordingFault(path, "lost");
  const off = Math.abs(clock.stretch - 1);
  if (off > MOST_DRIFT) throw recordingFault(path, off < LEAST_MISTAKEN ? "lost" : "rate", percent(clock.stretch));
  return clock;
}
