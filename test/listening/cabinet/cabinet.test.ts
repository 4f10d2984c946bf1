import { describe, expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { PresolderError } from "../../../src/errors.ts";
import { cabinetFilter } from "../../../src/listening/cabinet/cabinet-filter.ts";
import { cabinetOf, readCabinet } from "../../../src/listening/cabinet/read-cabinet.ts";
import { speakerFilter } from "../../../src/listening/speaker/filter.ts";
import { response } from "./response.ts";

const faultOf = (run: () => unknown) => {
  try {
    run();
  } catch (error) {
    if (error instanceof PresolderError) return { code: error.code, ...error.faults[0] };
    throw error;
  }
  return undefined;
};

describe("one's own cabinet", () => {
  it("is the response itself at its own rate, but for its level", () => {
    const samples = response(48_000);
    const { taps, delaySamples } = cabinetFilter(cabinetOf(48_000, [samples]), 48_000);
    const gain = taps[delaySamples + 100]! / samples[100]!;
    expect(taps.length).toBe(samples.length + delaySamples);
    for (let n = 0; n < samples.length; n++) expect(taps[n + delaySamples]).toBeCloseTo(gain * samples[n]!, 12);
  });

  it("is as loud as the stated speaker, however loud the file is", () => {
    const speaker = speakerFilter(48_000).taps;
    for (const gain of [1e-3, 1, 50]) {
      const file = Float32Array.from(speaker, (tap) => gain * tap);
      const { taps, delaySamples } = cabinetFilter(cabinetOf(48_000, [file]), 48_000);
      for (const n of [48, 60, 100]) expect(taps[n + delaySamples]! / speaker[n]!).toBeCloseTo(1, 3);
    }
  });

  it("takes two channels as two microphones heard at once", () => {
    const first = response(48_000);
    const second = first.map((value) => -0.5 * value);
    expect([...cabinetOf(48_000, [first, second]).samples.slice(80, 90)]).toEqual([
      ...first.slice(80, 90).map((value) => value * 0.25),
    ]);
  });

  it("is refused by the name of its field", () => {
    const wav = (samples: Float32Array, rate = 48_000) =>
      encodeWav({ sampleRateHz: rate, channels: [samples] }, "float32");
    expect(faultOf(() => readCabinet(Uint8Array.of(1, 2, 3)))).toMatchObject({ code: "WAV_INVALID", path: "cabinet" });
    expect(faultOf(() => readCabinet(wav(new Float32Array(400))))).toMatchObject({
      code: "SOUND_UNUSABLE",
      path: "cabinet",
    });
    expect(faultOf(() => readCabinet(wav(new Float32Array(48_001).fill(1))))).toMatchObject({
      code: "LIMIT_EXCEEDED",
      path: "cabinet",
    });
    expect(faultOf(() => readCabinet(wav(Float32Array.of(0, 1000))))).toMatchObject({ path: "cabinet" });
    const shrill = Float32Array.from({ length: 4000 }, (_, n) => Math.sin(Math.PI * (n / 4000)) ** 8 * (-1) ** n);
    expect(faultOf(() => cabinetFilter(cabinetOf(48_000, [shrill]), 48_000))).toMatchObject({
      code: "SOUND_UNUSABLE",
      path: "cabinet",
    });
  });
});
