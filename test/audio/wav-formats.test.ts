import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { decodeWav } from "../../src/audio/wav-decode.ts";
import { describeWith } from "../tools.ts";
import { rawSamples, run, sines, withDirectory } from "./audio-files.ts";

/** Half a step of each format at ±1; floats keep the float32 samples as they are. */
const SOX_FORMATS = [
  ["unsigned-integer", 8, 1 / 128],
  ["signed-integer", 16, 1 / 32_768],
  ["signed-integer", 24, 1 / 8_388_608],
  ["signed-integer", 32, 1 / 8_388_608],
  // sox keeps 32-bit integers inside; a float32 of such a number is half a step of 2^-24 away.
  ["floating-point", 32, 2 ** -24],
  ["floating-point", 64, 2 ** -24],
] as const;

const FFMPEG_CODECS = [
  ["pcm_u8", 1 / 128],
  ["pcm_s16le", 1 / 32_768],
  ["pcm_s24le", 1 / 8_388_608],
  ["pcm_s32le", 1 / 8_388_608],
  ["pcm_f32le", 1e-9],
  ["pcm_f64le", 1e-9],
] as const;

// An odd number of frames, so that 8-bit and 24-bit mono files need a pad byte.
const sounds = [8000, 44_100, 192_000].flatMap((rate) => [
  sines(rate, 1001 / rate, [440], 0.8),
  sines(rate, 1001 / rate, [440, 700], 0.8),
]);

function expectSame(file: Uint8Array, sound: (typeof sounds)[number], step: number): void {
  const decoded = decodeWav(file);
  expect(decoded.sampleRateHz).toBe(sound.sampleRateHz);
  expect(decoded.channels.length).toBe(sound.channels.length);
  decoded.channels.forEach((samples, channel) => {
    const wanted = sound.channels[channel]!;
    expect(samples.length).toBe(wanted.length);
    expect(Math.max(...samples.map((sample, n) => Math.abs(sample - wanted[n]!)))).toBeLessThanOrEqual(step);
  });
}

describeWith("sox", "files written by sox", () => {
  it.each(SOX_FORMATS)("%s of %d bits is read back at three rates, mono and stereo", (encoding, bits, step) => {
    withDirectory((directory) => {
      for (const sound of sounds) {
        const source = ["-t", "f64", "-r", `${sound.sampleRateHz}`, "-c", `${sound.channels.length}`, "-"];
        const path = join(directory, "sox.wav");
        run("sox", ["-D", ...source, "-e", encoding, "-b", `${bits}`, path], rawSamples(sound));
        expectSame(readFileSync(path), sound, step);
      }
    });
  });

  it("a length left open on a pipe reaches to the end of the file", () => {
    for (const sound of sounds) {
      const source = ["-t", "f64", "-r", `${sound.sampleRateHz}`, "-c", `${sound.channels.length}`, "-"];
      const file = run("sox", ["-D", ...source, "-b", "24", "-t", "wav", "-"], rawSamples(sound));
      expectSame(file, sound, 1 / 8_388_608);
    }
  });
});

describeWith("ffmpeg", "files written by ffmpeg", () => {
  it.each(FFMPEG_CODECS)(
    "%s is read back, with the LIST chunk before the samples, to a file and to a pipe",
    (codec, step) => {
      withDirectory((directory) => {
        for (const sound of sounds.slice(2, 4)) {
          const source = [
            "-f",
            "f64le",
            "-ar",
            `${sound.sampleRateHz}`,
            "-ac",
            `${sound.channels.length}`,
            "-i",
            "pipe:0",
          ];
          const target = ["-c:a", codec, "-metadata", "title=odd", "-f", "wav"];
          const path = join(directory, "ffmpeg.wav");
          const piped = run(
            "ffmpeg",
            ["-v", "error", "-y", ...source, ...target, path, ...target, "pipe:1"],
            rawSamples(sound),
          );
          expectSame(readFileSync(path), sound, step);
          expectSame(piped, sound, step);
        }
      });
    },
  );
});
