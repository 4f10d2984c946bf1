import { spawnSync } from "node:child_process";
import { expect, it } from "vitest";
import { integratedLoudness } from "../../src/audio/loudness.ts";
import { createRandom } from "../../src/audio/random.ts";
import { testSignal } from "../../src/audio/signals.ts";
import type { Sound } from "../../src/audio/sound.ts";
import { truePeak } from "../../src/audio/true-peak.ts";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { describeWith } from "../tools.ts";
import { sines, withDirectory, written } from "./audio-files.ts";

/** Integrated loudness and true peak by ffmpeg's `ebur128` filter, which prints one decimal. */
function measured(sound: Sound): { lufs: number; peakDb: number } {
  return withDirectory((directory) => {
    const path = written(directory, "sound.wav", encodeWav(sound, "float32"));
    const args = ["-nostats", "-i", path, "-af", "ebur128=peak=true:framelog=verbose", "-f", "null", "-"];
    const { stderr } = spawnSync("ffmpeg", args, { encoding: "utf8" });
    const summary = stderr.slice(stderr.lastIndexOf("Summary:"));
    const number = (pattern: RegExp) => Number(pattern.exec(summary)?.[1]);
    return { lufs: number(/I:\s+(-?[\d.]+) LUFS/), peakDb: number(/Peak:\s+(-?[\d.]+) dBFS/) };
  });
}

/** Notes dying away at different pitches, levels and gaps, as previews do. */
function plucks(sampleRateHz: number, channels: number): Sound {
  const samples = Array.from({ length: channels }, (_, channel) => {
    const random = createRandom(99 + channel);
    return Float32Array.from({ length: 6 * sampleRateHz }, (_, n) => {
      const t = (n / sampleRateHz) % 1.5;
      const note = 1 + Math.floor(n / sampleRateHz / 1.5);
      const tone = [1, 2, 3, 5].reduce(
        (sum, k) => sum + (Math.sin(2 * Math.PI * 110 * note * k * t) / k) * Math.exp(-t * k * 1.5),
        0,
      );
      return (0.2 / note) * tone + 0.001 * (random() / 2 ** 31 - 1);
    });
  });
  return { sampleRateHz, channels: samples };
}

const rates = [44_100, 48_000, 96_000];
const sounds: readonly [string, Sound][] = rates.flatMap((rate): [string, Sound][] => [
  [`a sweep at ${rate} Hz`, testSignal("sweep", rate)],
  [`noise at ${rate} Hz`, testSignal("noise", rate)],
  [`plucked notes at ${rate} Hz`, plucks(rate, 1)],
  [`plucked notes in stereo at ${rate} Hz`, plucks(rate, 2)],
  [`a low and a high sine in stereo at ${rate} Hz`, sines(rate, 3, [60, 9000], 0.3)],
]);

describeWith("ffmpeg", "loudness and true peak against ffmpeg's ebur128", () => {
  it.each(sounds)("%s", (_, sound) => {
    const { lufs, peakDb } = measured(sound);
    // 0.1 LU, and half of the last digit printed.
    expect(Math.abs(integratedLoudness(sound)! - lufs)).toBeLessThanOrEqual(0.15);
    // Two oversamplers may differ near Nyquist by what either leaves out there.
    expect(Math.abs(20 * Math.log10(truePeak(sound)) - peakDb)).toBeLessThan(0.5);
  });
});
