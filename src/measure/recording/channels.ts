import { louderChannel } from "../../audio/louder-channel.ts";
import type { Spectrum } from "../../network/nodal-analysis.ts";
import { pointsOf, ratio } from "../impedance/uncertain.ts";
import type { SignalKind } from "../signal/measuring-signal.ts";
import type { Transfer } from "./passes.ts";
import { type Reading, readRecording } from "./read-recording.ts";
import { recordingFault } from "./recording-fault.ts";

/** A recording with the field that brought it. */
export interface Recorded {
  readonly path: string;
  readonly sampleRateHz: number;
  readonly channels: readonly Float32Array[];
}

/** The only channel, or the louder of two. */
export function readLouder(kind: SignalKind, { path, sampleRateHz, channels }: Recorded): Reading {
  return readRecording(kind, louderChannel(channels), sampleRateHz, path);
}

const isOneInput = ([first, second]: readonly [Float32Array, Float32Array]) =>
  first.every((each, n) => each === second[n]) && first.some((each) => each !== 0);

/**
 * Both channels of a recording, by the clock of the first of them; `order` says which is which in the file.
 * @throws DATA_INSUFFICIENT where one input was recorded to both: no two inputs have the same hiss
 */
export function readBoth(
  kind: SignalKind,
  { path, sampleRateHz, channels }: Recorded,
  order: readonly [number, number],
): readonly [Reading, Reading] {
  const [first, second] = order.map((index) => channels[index]!) as [Float32Array, Float32Array];
  const reading = readRecording(kind, first, sampleRateHz, path);
  if (isOneInput([first, second])) throw recordingFault(path, "mono");
  return [reading, readRecording(kind, second, sampleRateHz, path, reading.clock)];
}

/** One reading over another, frequency by frequency. */
export function over(above: Transfer, below: Transfer): Transfer {
  const [a, b] = [pointsOf(above), pointsOf(below)];
  const points = a.map((each, i) => ratio(each, b[i]!));
  const part = (key: keyof Spectrum | "sd") => Float64Array.from(points, (point) => point[key]);
  return { frequenciesHz: above.frequenciesHz, re: part("re"), im: part("im"), sd: part("sd") };
}
