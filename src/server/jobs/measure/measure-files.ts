import { decodeWav, samplesIn } from "../../../audio/wav-decode.ts";
import type { MeasureAnswer, RecordingName } from "../../../contract/measure/measure.ts";
import { MEASURING_RATES_HZ } from "../../../contract/measure/signal.ts";
import { faultAt, PresolderError, refused } from "../../../errors.ts";
import { MAX_AUDIO_SECONDS, MAX_MEASURED_SAMPLES } from "../../../limits.ts";
import type { Recorded } from "../../../measure/recording/channels.ts";
import type { Reading } from "../../../measure/recording/read-recording.ts";

export type Files = Readonly<Partial<Record<RecordingName, Uint8Array>>>;

/** @throws REQUEST_INVALID naming each file that is missing, or that this measurement has no use for */
export function requireFiles(files: Files, needed: readonly RecordingName[], allowed: readonly RecordingName[]): void {
  const missing = needed.filter((name) => !files[name]);
  const unknown = Object.keys(files).filter((name) => ![...needed, ...allowed].includes(name as RecordingName));
  const faults = [
    ...missing.map((path) => ({ path, message: "is missing; expected a WAV file" })),
    ...unknown.map((path) => ({ path, message: `has no use here; expected ${[...needed, ...allowed].join(", ")}` })),
  ];
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
}

const millions = (count: number) => (count / 1e6).toPrecision(3);

/** @throws LIMIT_EXCEEDED where all recordings together are more sound than one request may bring, before any of it is read */
export function requireMeasurable(files: Readonly<Partial<Record<string, Uint8Array>>>): void {
  const samples = Object.values(files).reduce((sum, bytes) => sum + (bytes ? samplesIn(bytes) : 0), 0);
  if (samples <= MAX_MEASURED_SAMPLES) return;
  const message =
    `the recordings have ${millions(samples)} million samples in all channels together; expected at most ${millions(MAX_MEASURED_SAMPLES)}.` +
    " Record at 48 kHz, cut what is before and after the signal away, or send fewer recordings";
  throw faultAt("LIMIT_EXCEEDED", "body", message);
}

function decoded(path: string, bytes: Uint8Array, maxSeconds: number) {
  try {
    return decodeWav(bytes, maxSeconds);
  } catch (error) {
    // The reader names the field of the calls with one file.
    if (error instanceof PresolderError) throw faultAt(error.code, path, error.message);
    throw error;
  }
}

/** @param channels that it must have */
export function recordedAs(
  path: string,
  files: Readonly<Partial<Record<string, Uint8Array>>>,
  channels: 1 | 2,
  maxSeconds = MAX_AUDIO_SECONDS,
): Recorded {
  const sound = decoded(path, files[path]!, maxSeconds);
  if (!MEASURING_RATES_HZ.some((rate) => rate === sound.sampleRateHz)) {
    const expected = `expected ${MEASURING_RATES_HZ.join(", ")} Hz`;
    throw faultAt("REQUEST_INVALID", path, `has a sample rate of ${sound.sampleRateHz} Hz; ${expected}`);
  }
  if (sound.channels.length < channels) {
    throw faultAt("REQUEST_INVALID", path, "has one channel; expected two");
  }
  return { path, ...sound };
}

/** What a recording was like; of two channels the one that more is wrong with. */
export function recordingFigures(...readings: readonly Reading[]) {
  const worse = readings.reduce((most, each) => (each.leftOut.length > most.leftOut.length ? each : most));
  return {
    drift: worse.driftPpm,
    noise: Math.max(...readings.map(({ noiseDecibels }) => noiseDecibels)),
    leftOut: worse.leftOut.map(({ pass, damage }) => ({ pass, why: damage })),
  };
}

export function recordingTold(
  file: RecordingName,
  ...readings: readonly Reading[]
): MeasureAnswer["recordings"][number] {
  return { file, ...recordingFigures(...readings) };
}
