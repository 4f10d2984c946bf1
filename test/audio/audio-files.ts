import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Sound } from "../../src/audio/sound.ts";

/** Runs `use` with a directory of its own, removed afterwards. */
export function withDirectory<T>(use: (directory: string) => T): T {
  const directory = mkdtempSync(join(tmpdir(), "presolder-audio-"));
  try {
    return use(directory);
  } finally {
    rmSync(directory, { recursive: true, force: true });
  }
}

export function run(command: string, args: readonly string[], input?: Uint8Array): Buffer {
  return execFileSync(command, args, { stdio: ["pipe", "pipe", "pipe"], maxBuffer: 2 ** 28, ...(input && { input }) });
}

export function written(directory: string, name: string, bytes: Uint8Array): string {
  const path = join(directory, name);
  writeFileSync(path, bytes);
  return path;
}

/** Interleaved float64 samples, the raw form both sox and ffmpeg read. */
export function rawSamples(sound: Sound): Uint8Array {
  const { channels } = sound;
  const raw = new Float64Array(channels[0]!.length * channels.length);
  for (let n = 0; n < raw.length; n++) raw[n] = channels[n % channels.length]![Math.floor(n / channels.length)]!;
  return new Uint8Array(raw.buffer);
}

export function sines(
  sampleRateHz: number,
  seconds: number,
  frequenciesHz: readonly number[],
  amplitude: number,
): Sound {
  const length = Math.round(seconds * sampleRateHz);
  const channels = frequenciesHz.map((f) =>
    Float32Array.from({ length }, (_, n) => amplitude * Math.sin((2 * Math.PI * f * n) / sampleRateHz)),
  );
  return { sampleRateHz, channels };
}

export function dB(value: number): number {
  return 10 ** (value / 20);
}
