import { realFft } from "../../src/filter/real-fft.ts";
import type { Played } from "./recorded-notes.ts";

const FRAME = 2048;
const HOP_SECONDS = 0.02;
/** Octaves: edges in Hz. */
export const OCTAVES = [88, 177, 355, 710, 1420, 2840, 5680];

/** Energies of every octave, a row a frame of 46 ms at 44.1 kHz. */
export interface Bands {
  readonly seconds: readonly number[];
  readonly rows: readonly (readonly number[])[];
  readonly centroidsHz: readonly number[];
}

export function bandsOf({ samples, sampleRateHz }: Played): Bands {
  const hop = Math.round(HOP_SECONDS * sampleRateHz);
  const count = Math.floor((samples.length - FRAME) / hop);
  const window = Float64Array.from({ length: FRAME }, (_, i) => Math.sin((Math.PI * (i + 0.5)) / FRAME) ** 2);
  const spectrum = new Float64Array(FRAME + 2);
  const seconds = Array.from({ length: count }, (_, frame) => (frame * hop) / sampleRateHz);
  const frames = seconds.map((_, frame) => {
    realFft(FRAME).forward(
      spectrum,
      window.map((weight, i) => weight * samples[frame * hop + i]!),
    );
    return energiesOf(spectrum, sampleRateHz / FRAME);
  });
  return { seconds, rows: frames.map(({ row }) => row), centroidsHz: frames.map(({ centroidHz }) => centroidHz) };
}

function energiesOf(spectrum: Float64Array, binHz: number): { row: number[]; centroidHz: number } {
  const row = OCTAVES.slice(1).map(() => 0);
  let [sum, moment] = [0, 0];
  for (let bin = 0; bin <= FRAME / 2; bin += 1) {
    const hertz = bin * binHz;
    const octave = OCTAVES.findIndex((edge) => hertz < edge) - 1;
    if (octave < 0) continue;
    const energy = spectrum[2 * bin]! ** 2 + spectrum[2 * bin + 1]! ** 2;
    row[octave]! += energy;
    sum += energy;
    moment += energy * hertz;
  }
  return { row, centroidHz: moment / sum };
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.length % 2 === 1
    ? sorted[(sorted.length - 1) / 2]!
    : (sorted[sorted.length / 2 - 1]! + sorted[sorted.length / 2]!) / 2;
}

/** dB a second, straight through levels at times. */
export function slope(points: readonly (readonly [seconds: number, level: number])[]): number {
  const mean = (index: 0 | 1) => points.reduce((sum, point) => sum + point[index], 0) / points.length;
  const [time, level] = [mean(0), mean(1)];
  const rise = points.reduce((sum, [seconds, each]) => sum + (seconds - time) * (each - level), 0);
  return rise / points.reduce((sum, [seconds]) => sum + (seconds - time) ** 2, 0);
}

const decibels = (energy: number) => 10 * Math.log10(energy + 1e-14);
/** The first 25 dB, or 1.9 s, well over what is left at the end. */
const FALL_DB = 25;
const FALL_SECONDS = 1.9;
const OVER_FLOOR_DB = 8;
const ENOUGH_FRAMES = 6;

/** Seconds for 60 dB in each octave; undefined where too little of it stands over the noise. */
export function fallTimes({ seconds, rows }: Bands): (number | undefined)[] {
  return OCTAVES.slice(1).map((_, octave) => {
    const levels = rows.map((row) => decibels(row[octave]!));
    const floor = median(levels.slice(-20));
    const first = 2;
    const end = levels.findIndex(
      (level, i) =>
        i > first && (level < levels[first]! - FALL_DB || seconds[i]! > FALL_SECONDS || level < floor + OVER_FLOOR_DB),
    );
    if (end - first < ENOUGH_FRAMES) return undefined;
    const points = levels.slice(first, end).map((level, i) => [seconds[first + i]!, level] as const);
    return -60 / slope(points);
  });
}

/** Level of all octaves in dB, with its times, within a stretch. */
export function levelsIn({ seconds, rows }: Bands, from: number, to: number): [number, number][] {
  return seconds.flatMap((time, i): [number, number][] =>
    time < from || time > to ? [] : [[time, decibels(rows[i]!.reduce((sum, energy) => sum + energy, 0))]],
  );
}

/** The mean centroid of a stretch. */
export function centroidIn({ seconds, centroidsHz }: Bands, from: number, to: number): number {
  const inside = centroidsHz.filter((_, i) => seconds[i]! >= from && seconds[i]! <= to);
  return inside.reduce((sum, each) => sum + each, 0) / inside.length;
}
