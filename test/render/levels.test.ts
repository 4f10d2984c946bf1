import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { integratedLoudness } from "../../src/audio/loudness.ts";
import { truePeak } from "../../src/audio/true-peak.ts";
import { decodeWav } from "../../src/audio/wav-decode.ts";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { MATCHED_LUFS } from "../../src/render/levels.ts";
import { renderPreview } from "../../src/render/preview.ts";
import { renderBatch, type SetBatch, type SetRequest } from "../../src/render/preview-set.ts";
import { SIGNALS } from "../../src/render/signals.ts";
import { casesOf } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { readScenario, settingsOf, WORK } from "./scenario-settings.ts";

const { build } = readScenario("hss-250k-or-500k.json");
const phrase = (name: string) => ({ name, sampleRateHz: 48_000 });
const SWEEP = { lever: [1, 2, 3, 4, 5], tone: [0, 10] };
const base = { build, signal: phrase("muted-riff"), settings: expandSweep(new Controls(build), SWEEP), from: 0 };

/** Every WAV of a set, batch after batch. */
function wholeSet(request: SetRequest): { first: SetBatch; wavs: Uint8Array[] } {
  const first = renderBatch(request, WORK);
  const wavs = [...first.wavs];
  while (wavs.length < request.settings.length) {
    wavs.push(...renderBatch({ ...request, from: wavs.length, levels: first.levels }, WORK).wavs);
  }
  return { first, wavs };
}

const dbtp = (wav: Uint8Array) => 20 * Math.log10(truePeak(decodeWav(wav)));

function ffmpegLoudness(wav: Uint8Array): { lufs: number; peak: number } {
  const directory = mkdtempSync(join(tmpdir(), "presolder-"));
  try {
    const file = join(directory, "preview.wav");
    writeFileSync(file, wav);
    const run = spawnSync(
      "ffmpeg",
      ["-hide_banner", "-nostats", "-i", file, "-af", "ebur128=peak=true", "-f", "null", "-"],
      {
        encoding: "utf8",
      },
    );
    const summary = run.stderr.slice(run.stderr.lastIndexOf("Summary:"));
    return {
      lufs: Number(/I:\s+(-?[\d.]+) LUFS/.exec(summary)?.[1]),
      peak: Number(/Peak:\s+(-?[\d.]+) dBFS/.exec(summary)?.[1]),
    };
  } finally {
    rmSync(directory, { recursive: true });
  }
}

describe("a matched set", () => {
  const { first, wavs } = wholeSet({ ...base, level: "matched", encoding: "pcm16" });
  const loudness = wavs.map((wav) => integratedLoudness(decodeWav(wav))!);

  it("has every preview within 0.2 LU of the others", () => {
    expect(wavs).toHaveLength(10);
    expect(Math.max(...loudness) - Math.min(...loudness)).toBeLessThan(0.2);
  });

  it("has no true peak over -1 dBTP", () => {
    for (const wav of wavs) expect(dbtp(wav)).toBeLessThanOrEqual(-1);
  });

  it("tells loudness and peak as they can be measured in the files", () => {
    for (const [index, wav] of wavs.entries()) {
      expect(first.levels[index]!.lufs).toBeCloseTo(loudness[index]!, 1);
      expect(first.levels[index]!.truePeakDbtp).toBeCloseTo(dbtp(wav), 1);
    }
  });

  describeWith("ffmpeg", "by ffmpeg's ebur128", () => {
    it("has the told loudness within 0.1 LU and no peak over -1 dBTP in its previews", () => {
      for (const [index, wav] of casesOf([...wavs.entries()], 3)) {
        const { lufs, peak } = ffmpegLoudness(wav);
        // ffmpeg prints one decimal, which adds half a step to the promised 0.1.
        expect(Math.abs(lufs - first.levels[index]!.lufs!)).toBeLessThanOrEqual(0.15);
        expect(peak).toBeLessThanOrEqual(-0.9);
      }
    });
  });
});

describe("a single matched preview", () => {
  const settings = settingsOf(build, { lever: 1 });

  it("stands at -26 LUFS", () => {
    const { wav } = renderPreview(
      { build, signal: phrase("strum"), settings, level: "matched", encoding: "pcm24" },
      WORK,
    );
    expect(integratedLoudness(decodeWav(wav))).toBeCloseTo(-26, 1);
  });

  const phrases = SIGNALS.filter(({ kind }) => kind === "phrase").map(({ name }) => name);
  const corners = [1, 2, 5].flatMap((lever) => [0, 10].map((tone) => ({ lever, tone })));
  it.each(casesOf(phrases, 3))("of %s is as loud in every setting as in any other", { timeout: 30_000 }, (name) => {
    for (const raw of corners) {
      const request = { build, signal: phrase(name), settings: settingsOf(build, raw) };
      const { lufs } = renderPreview({ ...request, level: "matched", encoding: "pcm16" }, WORK);
      expect(Math.abs(lufs! - MATCHED_LUFS)).toBeLessThan(0.1);
    }
  });

  it("stays lower where its peak would pass the ceiling", () => {
    const { wav, lufs } = renderPreview(
      { build, signal: phrase("click"), settings, level: "matched", encoding: "float32" },
      WORK,
    );
    expect(lufs).toBeLessThan(-26);
    expect(dbtp(wav)).toBeCloseTo(-1, 1);
    expect(dbtp(wav)).toBeLessThanOrEqual(-1);
  });

  it("reaches the target from a volume so low that most of it lies under the absolute gate", () => {
    const low = settingsOf(build, { lever: 1, volume: 0.2 });
    const { wav } = renderPreview(
      { build, signal: phrase("strum"), settings: low, level: "matched", encoding: "float32" },
      WORK,
    );
    expect(integratedLoudness(decodeWav(wav))).toBeCloseTo(-26, 1);
  });

  it("of a volume at its end is left as it is, its loudness told as none", () => {
    const off = settingsOf(build, { volume: 0 });
    const { lufs, truePeakDbtp, gainDb, wav } = renderPreview(
      { build, signal: phrase("pluck"), settings: off, level: "matched", encoding: "float32" },
      WORK,
    );
    expect({ lufs, truePeakDbtp, gainDb }).toEqual({ lufs: null, truePeakDbtp: null, gainDb: 0 });
    // 1 Ω beside 6 kΩ is −76 dB.
    expect(decodeWav(wav).channels[0]!.every((sample) => Math.abs(sample) < 1e-3)).toBe(true);
  });
});

describe("the true level", () => {
  const settings = [settingsOf(build, { lever: 1 }), settingsOf(build, { lever: 1, volume: 5 })];
  const loudFile = encodeWav(
    { sampleRateHz: 48_000, channels: [new Float32Array(24_000).map((_, n) => 2 * Math.sin(n / 8))] },
    "float32",
  );

  it("leaves floats as they are, 1.0 being 1 V, however loud", () => {
    const { levels, wavs } = renderBatch(
      { ...base, signal: { file: loudFile }, settings, level: "true", encoding: "float32" },
      WORK,
    );
    expect(levels.map(({ gainDb }) => gainDb)).toEqual([0, 0]);
    expect(dbtp(wavs[0]!)).toBeGreaterThan(3);
  });

  it("lowers a set of integers by one gain, only as far as -1 dBTP needs", () => {
    const { levels, wavs } = renderBatch(
      { ...base, signal: { file: loudFile }, settings, level: "true", encoding: "pcm16" },
      WORK,
    );
    expect(levels[0]!.gainDb).toBeLessThan(0);
    expect(levels[1]!.gainDb).toBe(levels[0]!.gainDb);
    expect(dbtp(wavs[0]!)).toBeCloseTo(-1, 1);
    expect(levels[0]!.lufs! - levels[1]!.lufs!).toBeGreaterThan(10);
  });

  it("leaves integers alone where they fit", () => {
    const { levels } = renderBatch({ ...base, settings, level: "true", encoding: "pcm16" }, WORK);
    expect(levels.map(({ gainDb }) => gainDb)).toEqual([0, 0]);
  });
});

it("a set that comes in several batches is the same as one rendered preview by preview", () => {
  const settings = base.settings.slice(0, 3);
  const { first } = wholeSet({ ...base, settings, level: "true", encoding: "pcm16" });
  const later = renderBatch(
    { ...base, settings, level: "true", encoding: "pcm16", from: 2, levels: first.levels },
    WORK,
  );
  expect(later.wavs).toHaveLength(1);
  expect(Buffer.from(later.wavs[0]!).equals(Buffer.from(first.wavs[2]!))).toBe(true);
});
