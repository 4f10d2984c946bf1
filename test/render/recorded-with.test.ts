import { describe, expect, it } from "vitest";
import { testSignal } from "../../src/audio/signals.ts";
import { decodeWav } from "../../src/audio/wav-decode.ts";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import type { Build } from "../../src/build-file/schema.ts";
import { Controls, type RawSettings, rawSettings } from "../../src/build-file/settings.ts";
import { PresolderError } from "../../src/errors.ts";
import { renderPreview } from "../../src/render/preview.ts";
import { MAX_BOOST_DB } from "../../src/render/undo.ts";
import { curveIn, readScenario, SCENARIOS, settingsOf, WORK } from "./scenario-settings.ts";
import { largestDifference, measuredTransfer, peakOf } from "./spectra.ts";

const RATE = 48_000;
const { build } = readScenario("hss-250k-or-500k.json");
const input = testSignal("noise", RATE).channels[0]!;

interface Side {
  readonly build: Build;
  readonly raw: RawSettings;
}

/** Gain from a recording made with `old` to the same playing through `wanted`, 40 Hz to 16 kHz. */
function measured(old: Side, wanted: Side, recording = input) {
  const file = encodeWav({ sampleRateHz: RATE, channels: [recording] }, "float32");
  const preview = renderPreview(
    {
      build: wanted.build,
      settings: settingsOf(wanted.build, wanted.raw),
      signal: { file },
      recordedWith: { build: old.build, settings: settingsOf(old.build, old.raw) },
      level: "true",
      encoding: "float32",
    },
    WORK,
  );
  const output = decodeWav(preview.wav).channels[0]!;
  return { ...preview, output, ...measuredTransfer(recording, output, RATE, preview.delaySamples, 40, 16_000) };
}

describe("a recording whose own circuit is divided out", () => {
  it.each([{}, { lever: 2, tone: 4 }, { lever: 4, tone: 0 }, { lever: 5, volume: 2 }, { lever: 1, "tone2.s": "up" }])(
    "is itself again where the same build and settings %o follow",
    (raw) => {
      const { magnitude, phase, limits } = measured({ build, raw }, { build, raw });
      expect(largestDifference(magnitude, new Float64Array(magnitude.length))).toBeLessThan(0.1);
      expect(largestDifference(phase, new Float64Array(phase.length))).toBeLessThan(1);
      expect(limits).toEqual([]);
    },
  );

  it.each([
    [{ lever: 5 }, { lever: 1 }],
    [
      { lever: 1, tone: 7 },
      { lever: 3, tone: 10 },
    ],
    [{ lever: 2 }, { lever: 4, tone: 2 }],
    [
      { lever: 5, volume: 8 },
      { lever: 5, volume: 10 },
    ],
  ] as const)("goes from %o to %o by the difference of the curves, where the bound is far", (oldRaw, newRaw) => {
    const result = measured({ build, raw: oldRaw }, { build, raw: newRaw });
    const { frequenciesHz } = result;
    const before = curveIn(build, settingsOf(build, oldRaw), frequenciesHz).magnitude;
    const after = curveIn(build, settingsOf(build, newRaw), frequenciesHz).magnitude;
    const wanted = after.map((level, i) => level - before[i]!);
    expect(Math.max(...wanted)).toBeLessThan(MAX_BOOST_DB - 7);
    expect(largestDifference(result.magnitude, wanted)).toBeLessThan(0.1);
  });

  it("is boosted no further than the bound, and the answer tells where", () => {
    const { magnitude, limits, frequenciesHz } = measured(
      { build, raw: { lever: 5, tone: 0 } },
      { build, raw: { lever: 5 } },
    );
    expect(Math.max(...magnitude)).toBeLessThan(MAX_BOOST_DB + 0.1);
    expect(limits.length).toBeGreaterThan(0);
    const [limit] = limits;
    expect(limit!.shortByDb).toBeGreaterThan(0.5);
    const inside = magnitude.filter((_, i) => frequenciesHz[i]! > limit!.fromHz && frequenciesHz[i]! < limit!.toHz);
    expect(Math.min(...inside)).toBeGreaterThan(MAX_BOOST_DB - 9);
  });

  it.each(SCENARIOS)("of $name dies away within the look-ahead, so nothing wraps round to the end", (scenario) => {
    const { build: guard, settings } = scenario;
    const click = testSignal("click", RATE).channels[0]!;
    for (const [old, wanted] of [
      [0, settings.length - 1],
      [settings.length - 1, 0],
      [Math.floor(settings.length / 3), Math.floor(settings.length / 2)],
    ] as const) {
      const raw = (index: number) => rawSettings(new Controls(guard), settings[index]!);
      const { output } = measured({ build: guard, raw: raw(old) }, { build: guard, raw: raw(wanted) }, click);
      const largest = peakOf(output);
      expect(Math.abs(output[0]!)).toBeLessThan(1e-4 * largest);
      expect(Math.abs(output.at(-1)!)).toBeLessThan(1e-4 * largest);
    }
  });

  it("cannot have been made with a circuit that is silent", () => {
    const act = () => measured({ build, raw: { volume: 0 } }, { build, raw: {} });
    expect(act).toThrow(PresolderError);
    expect(act).toThrow(/recordedWith\.settings.*lets nothing through/);
  });
});
