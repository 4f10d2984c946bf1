import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { usualAmplifier } from "../../src/listening/noise/amplifier.ts";
import { Guitar } from "../../src/listening/noise/guitar.ts";
import type { NoiseWish } from "../../src/listening/noise/noise-maker.ts";
import { positionNoise } from "../../src/listening/noise/position-noise.ts";
import { USUAL_ROOM } from "../../src/listening/noise/room.ts";
import { type PreviewRequest, renderPreview } from "../../src/render/preview.ts";
import { LEVER_PLAN } from "../fixtures/plans.ts";
import { describeWith } from "../tools.ts";
import { settingsOf, WORK } from "./scenario-settings.ts";

const RATE = 48_000;
const KELVIN = 293.15;
const build = readBuild({ presolder: 1, plan: LEVER_PLAN, cable: { length: "3m", capacitance: "100p" } });
const guitar = new Guitar(build);
const conditions = { mainsHz: 50 as const, room: USUAL_ROOM, kelvin: KELVIN, amplifier: usualAmplifier(build) };
const wish = (more: Partial<NoiseWish>): NoiseWish => ({
  mainsHz: null,
  isCoilsOnly: false,
  isHissing: false,
  room: USUAL_ROOM,
  amplifier: conditions.amplifier,
  ...more,
});

function previewOf(more: Partial<PreviewRequest>) {
  const signal = { name: "click", sampleRateHz: RATE };
  const settings = settingsOf(build, { lever: 5 });
  return renderPreview({ build, signal, settings, level: "true", encoding: "float32", ...more }, WORK);
}

/** The volume at nothing lets no string through: what is left is noise. */
const silent = settingsOf(build, { lever: 5, volume: 0 });

/** Nothing but the noise is in what comes out. */
const silence = { file: encodeWav({ sampleRateHz: RATE, channels: [new Float32Array(6.5 * RATE)] }, "float32", 1) };
const edges = Array.from({ length: 7 }, (_, k) => 200 * 2 ** k);
const bands = edges.slice(0, -1).map((low, k) => [low, edges[k + 1]!] as const);

const SCRIPT = `
import json, sys
from scipy.io import wavfile
from scipy.signal import welch
bands = json.loads(sys.argv[1])
answers = []
for file in sys.argv[2:]:
    rate, samples = wavfile.read(file)
    f, p = welch(samples[rate // 2 :].astype(float), rate, nperseg=4096)
    answers.append([p[(f >= low) & (f < high)].mean() for low, high in bands])
print(json.dumps(answers))`;

/** Mean power densities of WAVs in those bands by Welch's method (SciPy), V²/Hz. */
function welch(wavs: readonly Uint8Array[]): number[][] {
  const directory = mkdtempSync(join(tmpdir(), "presolder-noise-"));
  try {
    const files = wavs.map((wav, index) => {
      const file = join(directory, `${index}.wav`);
      writeFileSync(file, wav);
      return file;
    });
    const args = ["-c", SCRIPT, JSON.stringify(bands), ...files];
    return JSON.parse(execFileSync("/usr/bin/python3", args).toString()) as number[][];
  } finally {
    rmSync(directory, { recursive: true, force: true });
  }
}

describeWith(
  "scipy",
  "hiss in a WAV, measured back by Welch's method, within 0.5 dB of 4kT·Re Z and what the input adds",
  () => {
    const cases = [
      { name: "of the neck pickup's circuit and the input", volume: 10, amplifier: conditions.amplifier },
      { name: "of the circuit alone, the volume half way", volume: 6, amplifier: { voltage: 0, current: 0 } },
    ].map((each) => ({ ...each, settings: settingsOf(build, { lever: 5, volume: each.volume }) }));
    const measured = welch(
      cases.map(({ settings, amplifier }) => {
        const noise = wish({ isHissing: true, amplifier });
        return previewOf({ settings, signal: silence, noise }).wav;
      }),
    );

    it.each(cases.map((each, index) => ({ ...each, index })))("$name", ({ settings, amplifier, index }) => {
      for (const [band, [low, high]] of bands.entries()) {
        const grid = Float64Array.from({ length: 100 }, (_, k) => low + ((k + 0.5) * (high - low)) / 100);
        const { circuit, amplifier: own } = guitar.hissIn(settings, grid, { kelvin: KELVIN, amplifier });
        const mean = circuit.reduce((sum, power, k) => sum + power + own[k]!, 0) / grid.length;
        expect(Math.abs(10 * Math.log10(measured[index]![band]! / mean))).toBeLessThan(0.5);
      }
    });
  },
);

function headerBytes(wav: Uint8Array): number {
  return Buffer.from(wav.buffer, wav.byteOffset, 400).indexOf("data") + 8;
}

function samplesOf(wav: Uint8Array): Float32Array {
  const bytes = wav.slice(headerBytes(wav));
  return new Float32Array(bytes.buffer, 0, bytes.length >> 2);
}

const rms = (samples: Float32Array) =>
  Math.sqrt(samples.reduce((sum, value) => sum + value * value, 0) / samples.length);

describe("hum in a WAV", () => {
  const settings = settingsOf(build, { lever: 5 });

  it("is as strong as the position's figures say, coils, loops and open wires together", () => {
    const [noisy, plain] = [{ noise: wish({ mainsHz: 50 }) }, {}].map((more) =>
      samplesOf(previewOf({ settings, ...more }).wav),
    );
    const added = noisy!.map((value, n) => value - plain![n]!).subarray(0.2 * RATE, 0.8 * RATE);
    const { hum } = positionNoise(guitar, settings, conditions);
    expect(20 * Math.log10(rms(added) / hum.flat)).toBeCloseTo(0, 2);
  });

  it("is the same on every rendering", () => {
    const noise = wish({ mainsHz: 60, isHissing: true });
    expect(Buffer.from(previewOf({ settings, noise }).wav).equals(previewOf({ settings, noise }).wav)).toBe(true);
  });

  it("leaves a silent setting silent where previews are matched in loudness", () => {
    const preview = previewOf({
      settings: silent,
      level: "matched",
      noise: wish({ mainsHz: 50, isHissing: true }),
    });
    expect(preview).toMatchObject({ gainDb: 0, lufs: null });
    expect(rms(samplesOf(preview.wav))).toBeGreaterThan(1e-7);
  });
});
