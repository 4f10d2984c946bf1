import { spawnSync } from "node:child_process";
import { describe, expect, it, test } from "vitest";
import { kWeighting } from "../../../src/audio/k-weighting.ts";
import type { Sound } from "../../../src/audio/sound.ts";
import { stringLevels } from "../../../src/audio/string-levels/string-levels.ts";
import type { StringLevelsQuestion } from "../../../src/audio/string-levels/usable-plucks.ts";
import { LEVEL_FROM_SECONDS, LEVEL_TO_SECONDS } from "../../../src/audio/string-levels/usable-plucks.ts";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { HEARD } from "../../../src/bench/heights/positions.ts";
import type { PresolderError } from "../../../src/errors.ts";
import { describeWith } from "../../tools.ts";
import { run, withDirectory, written } from "../audio-files.ts";
import { LOW_TO_HIGH, pluckTimes, recordTake, type Take } from "./take.ts";

const SIX: StringLevelsQuestion = { strings: 6, plucks: undefined, order: "low-to-high" };
const measure = (take: Take, question = SIX) => stringLevels(recordTake(take), question);
const levels = (take: Take, question = SIX) => measure(take, question).strings.map(({ level }) => level);
/** Of every tenth of a decibel that a hand is off, half is left by the median of three. */
const within = (a: readonly number[], b: readonly number[], db: number) =>
  a.forEach((level, index) => void expect(Math.abs(level - b[index]!), `string ${index + 1}`).toBeLessThan(db));

/** Every pluck scrapes a little differently. */
const EACH_SCRAPE_DB = 0.1;

describe("levels of open strings", () => {
  const clean = levels({ noise: 0, hum: 0 });

  test("every pluck is found to 10 ms, and the strings come in the players' order", () => {
    const { strings } = measure({ plucks: 2 });
    expect(strings.map(({ string }) => string)).toEqual([1, 2, 3, 4, 5, 6]);
    const found = [...strings]
      .reverse()
      .flatMap(({ plucks }) => plucks.map(({ starts }) => starts - LEVEL_FROM_SECONDS));
    pluckTimes({ plucks: 2 }).forEach((time, index) => void expect(found[index]).toBeCloseTo(time, 1.7));
    const down = measure({ strings: [1, 2, 3, 4, 5, 6] }, { ...SIX, order: "high-to-low" });
    within(
      down.strings.map(({ level }) => level),
      levels({}),
      EACH_SCRAPE_DB,
    );
  });

  test("hum 30 dB under the loudest string and noise move no level by 0.1 dB", () => {
    within(levels({ hum: 3, noise: 1e-4 }), clean, 0.1);
  });

  test("strings up to 20 dB apart are found, each as soft as it was plucked", () => {
    const soft = levels({ hum: 0.3, velocity: (index) => (index % 2 === 0 ? 0.08 : 0.8) });
    within(
      soft,
      clean.map((level, index) => (index % 2 === 1 ? level - 20 : level)),
      0.2,
    );
  });

  test("of several plucks of a string the median counts, so that one miss-hit does not", () => {
    const missHit = levels({ plucks: 3, velocity: (index) => (index % 3 === 1 ? 0.2 : 0.8) });
    within(missHit, clean, EACH_SCRAPE_DB);
  });

  test("the rate and a second, silent channel change nothing", () => {
    // 11 kHz leaves out what rings above 5 kHz.
    within(levels({ sampleRateHz: 11_025 }), levels({}), 0.15);
    const { sampleRateHz, channels } = recordTake({});
    const stereo: Sound = { sampleRateHz, channels: [new Float32Array(channels[0]!.length), channels[0]!] };
    within(
      stringLevels(stereo, SIX).strings.map(({ level }) => level),
      levels({}),
      1e-9,
    );
  });

  test("the second that is measured is the one that the model's levels are of", () => {
    expect([LEVEL_FROM_SECONDS, LEVEL_TO_SECONDS]).toEqual([HEARD.fromSeconds, HEARD.toSeconds]);
  });
});

describe("a recording that cannot be measured is refused under signal, with the reason and what to do", () => {
  const clippedTake = (): Sound => {
    const { sampleRateHz, channels } = recordTake({ gain: 20 });
    return { sampleRateHz, channels: channels.map((samples) => samples.map((x) => Math.max(-1, Math.min(1, x)))) };
  };
  const cases: readonly [string, () => Sound, RegExp][] = [
    ["clipped", clippedTake, /^clipped at 0\.6\d s; .*turn the recording level down/],
    ["too short", () => recordTake({ tailSeconds: 0.7 }), /ends 0\.70 s after its last pluck.*let it ring/],
    [
      "fewer plucks than strings",
      () => recordTake({ strings: LOW_TO_HIGH.slice(1) }),
      /^5 plucks were found \(at .*expected 6/,
    ],
    [
      "no whole number of plucks a string",
      () => recordTake({ strings: [...LOW_TO_HIGH, 1] }),
      /^7 plucks .*leave out knocks/,
    ],
    ["overlapping plucks", () => recordTake({ everySeconds: 0.8, ringSeconds: 0.7 }), /0\.60 s and 1\.40 s overlap/],
    ["undamped strings", () => recordTake({ ringSeconds: 10 }), /still rings at 2\.20 s.*damp each string/],
    ["silence", () => ({ sampleRateHz: 8_000, channels: [new Float32Array(8_000)] }), /^0 plucks were found; /],
    ["one sample", () => ({ sampleRateHz: 8_000, channels: [Float32Array.of(0.5)] }), /^0 plucks were found; /],
  ];
  it.each(cases)("%s", (_, take, message) => {
    const sound = take();
    let refusal: unknown;
    try {
      stringLevels(sound, SIX);
    } catch (error) {
      refusal = error;
    }
    const { code, faults, message: told } = refusal as PresolderError;
    expect(told).toMatch(message);
    expect([code, faults.map(({ path }) => path)]).toEqual(["SOUND_UNUSABLE", ["signal"]]);
  });
});

/** The rate for which the filters' coefficients are published. */
const AT_48K = { sampleRateHz: 48_000 };

/** RMS level of a stretch as a tool tells it, in dB. */
type Meter = (path: string, fromSeconds: number, seconds: number) => number;

const astats =
  (filters: readonly string[]): Meter =>
  (path, from, seconds) => {
    const chain = [...filters, `atrim=${from}:${from + seconds}`, "astats"].join(",");
    const args = ["-hide_banner", "-nostats", "-i", path, "-af", chain, "-f", "null", "-"];
    const { stderr } = spawnSync("ffmpeg", args, { encoding: "utf8" });
    return Number(/Overall[\s\S]*RMS level dB: (-?[\d.]+)/.exec(stderr)![1]);
  };

const soxStat: Meter = (path, from, seconds) => {
  const raw = run("sox", [path, "-t", "f64", "-", "trim", String(from), String(seconds)]);
  const samples = new Float64Array(raw.buffer.slice(raw.byteOffset, raw.byteOffset + raw.byteLength));
  return 10 * Math.log10(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);
};

function worstAgainst(meter: Meter, take: Take, figure: "level" | "rms", offsetDb = 0): number {
  return withDirectory((directory) => {
    const sound = recordTake(take);
    const path = written(directory, "take.wav", encodeWav(sound, "float32"));
    const plucks = stringLevels(sound, SIX)
      .strings.flatMap((string) => string.plucks)
      .filter((_, index) => index % 2 === 0);
    return Math.max(
      ...plucks.map((pluck) =>
        Math.abs(pluck[figure] - offsetDb - meter(path, pluck.starts, pluck.ends - pluck.starts)),
      ),
    );
  });
}

describeWith("ffmpeg", "string levels beside ffmpeg", () => {
  test("plain levels of plucks are those of astats over the same second, hum and noise included", () => {
    expect(worstAgainst(astats([]), { ...AT_48K, hum: 2, noise: 1e-4 }, "rms")).toBeLessThan(0.01);
  });

  test("K-weighted levels are those of the published filters run by ffmpeg, then astats", () => {
    const biquads = kWeighting(48_000).map(
      ({ b0, b1, b2, a1, a2 }) => `biquad=b0=${b0}:b1=${b1}:b2=${b2}:a0=1:a1=${a1}:a2=${a2}`,
    );
    expect(
      worstAgainst(astats(["aformat=sample_fmts=dbl", ...biquads]), { ...AT_48K, hum: 0, noise: 0 }, "level", -0.691),
    ).toBeLessThan(0.05);
  });
});

describeWith("sox", "string levels beside sox", () => {
  test("plain levels of plucks are those of the stretch that sox cuts out", () => {
    expect(worstAgainst(soxStat, { ...AT_48K, hum: 2, noise: 1e-4 }, "rms")).toBeLessThan(0.01);
  });
});
