import { describe, expect, it } from "vitest";
import { decodeWav } from "../../src/audio/wav-decode.ts";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { readBuild } from "../../src/build-file/read-build.ts";
import { Controls } from "../../src/build-file/settings.ts";
import { expandSweep } from "../../src/build-file/sweep.ts";
import { amplitudeFromDecibels } from "../../src/decibels.ts";
import { renderBatch, type SetRequest } from "../../src/render/preview-set.ts";
import { createRenderer } from "../../src/render/renderer.ts";
import { noise } from "../filter/noise.ts";
import { threeSingles } from "../fixtures/circuits.ts";
import { WORK } from "./scenario-settings.ts";

const build = readBuild(threeSingles());
const settings = expandSweep(new Controls(build), { lever: [1, 2, 3], tone: [0, 5, 10] });

function loudFile(seconds: number): Uint8Array {
  const samples = noise(48_000 * seconds, 7).map((value) => 0.9 * value);
  return encodeWav({ sampleRateHz: 48_000, channels: [samples] }, "float32");
}

/** Every setting rendered by itself, at the gain that the set was told. */
function oneByOne(request: SetRequest, gainsDb: readonly number[]): Uint8Array[] {
  return request.settings.map((each, index) => {
    const sound = createRenderer(request, request.settings, WORK).render(each);
    return encodeWav(sound, request.encoding, amplitudeFromDecibels(gainsDb[index]!));
  });
}

describe("a whole set", () => {
  it.each([
    ["true", "pcm16"],
    ["true", "float32"],
    ["matched", "pcm16"],
  ] as const)("holds what each setting gives by itself, though the loudest comes last: %s, %s", (level, encoding) => {
    const request = { build, settings, signal: { file: loudFile(1) }, level, encoding, from: 0 };
    const { levels, wavs } = renderBatch(request, WORK);
    if (level === "true") expect(levels[0]!.gainDb < 0).toBe(encoding === "pcm16");
    const wanted = oneByOne(
      request,
      levels.map(({ gainDb }) => gainDb),
    );
    expect(wavs.map((wav) => Buffer.from(wav).toString("base64"))).toEqual(
      wanted.map((wav) => Buffer.from(wav).toString("base64")),
    );
  });

  it("renders settings that sound the same once: no tone pot is in the circuit at position 1", () => {
    const request = {
      build,
      settings,
      signal: { name: "pluck", sampleRateHz: 48_000 },
      level: "true",
      encoding: "pcm16",
      from: 0,
    } as const;
    const { wavs, levels } = renderBatch(request, WORK);
    expect(wavs).toHaveLength(9);
    expect(wavs[1]).toBe(wavs[0]);
    expect(wavs[2]).toBe(wavs[0]);
    expect(new Set(wavs).size).toBe(7);
    expect(levels[1]).toEqual(levels[0]);
  });

  it("goes on from one batch to the next with the same WAVs", () => {
    const request = {
      build,
      settings,
      signal: { file: loudFile(1) },
      level: "true",
      encoding: "pcm16",
      from: 0,
    } as const;
    const first = renderBatch(request, WORK);
    const rest = renderBatch({ ...request, from: 4, levels: first.levels }, WORK);
    expect(rest.wavs).toEqual(first.wavs.slice(4));
  });

  it("is silent where a setting lets nothing through", () => {
    const quiet = expandSweep(new Controls(build), { lever: [1, 3], volume: [0] });
    const request = {
      build,
      settings: quiet,
      signal: { file: loudFile(1) },
      level: "matched",
      encoding: "float32",
      from: 0,
    } as const;
    const { wavs, levels } = renderBatch(request, WORK);
    expect(levels.map(({ lufs }) => lufs)).toEqual([null, null]);
    for (const wav of wavs) expect(decodeWav(wav).channels[0]!.every((sample) => Math.abs(sample) < 5e-4)).toBe(true);
  });

  it("is refused for its size before any of its filters is made", () => {
    const many = expandSweep(new Controls(build), {
      lever: [1, 2, 3, 4, 5],
      tone: [0, 2, 4, 6, 8, 10],
      volume: [2, 4, 6, 8],
    });
    const request = {
      build,
      settings: many,
      signal: { file: loudFile(60) },
      level: "true",
      encoding: "pcm16",
      from: 0,
    } as const;
    let checkpoints = 0;
    const counted = { checkpoint: () => void checkpoints++ };
    expect(() => renderBatch({ ...request, settings: [...many, many[0]!] }, counted)).toThrow(
      /sweep: asks for 121 WAVs, 7260 s and \d+ MiB in all; expected at most 7200 s/,
    );
    expect(checkpoints).toBe(0);
  });
});
