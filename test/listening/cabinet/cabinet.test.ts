import { describe, expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { PresolderError } from "../../../src/errors.ts";
import { cabinetFilter } from "../../../src/listening/cabinet/cabinet-filter.ts";
import { cabinetOf, readCabinet } from "../../../src/listening/cabinet/read-cabinet.ts";
import { speakerFilter } from "../../../src/listening/speaker/filter.ts";
import { describeWith } from "../../tools.ts";
import { python } from "../python.ts";

/** A ringing low-pass with an echo: something like a cabinet, and nothing above 15 kHz worth mention. */
function response(rate: number, seconds = 0.05): Float32Array {
  return Float32Array.from({ length: Math.round(rate * seconds) }, (_, n) => {
    const t = n / rate;
    const ring = (from: number, hertz: number, decay: number) =>
      t < from ? 0 : (t - from) ** 2 * Math.exp(-(t - from) * decay) * Math.sin(2 * Math.PI * hertz * (t - from));
    return 5e5 * (ring(0.001, 2500, 4000) + 0.3 * ring(0.004, 700, 2500));
  });
}

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

const COMPARE = `
import sys, json, numpy as np
from scipy import signal
job = json.load(sys.stdin)
def of(taps, delay, rate, f):
    return signal.freqz(taps, 1, worN=f, fs=rate)[1] * np.exp(2j*np.pi*f*delay/rate)
found = []
for each in job["filters"]:
    f = np.geomspace(20, min(18000, 0.8*min(each["rate"], job["rate"])/2), 300)
    own = of(job["samples"], 0, job["rate"], f)
    ratio = of(each["taps"], each["delay"], each["rate"], f) / own
    heard = np.abs(own) > 1e-3*np.max(np.abs(own))
    ratio = ratio[heard] / ratio[heard][0]
    found.append(float(np.max(np.abs(20*np.log10(np.abs(ratio))))))
print(json.dumps(found))
`;

describeWith("scipy", "one's own cabinet at another rate against scipy.signal", () => {
  it("has the response of the file, within 0.05 dB, at every rate of a sound", () => {
    const samples = response(44_100);
    const filters = [8000, 44_100, 48_000, 96_000, 192_000].map((rate) => {
      const { taps, delaySamples } = cabinetFilter(cabinetOf(44_100, [samples]), rate);
      return { taps: [...taps], delay: delaySamples, rate };
    });
    const worst = python<number[]>(COMPARE, { samples: [...samples], rate: 44_100, filters });
    expect(Math.max(...worst)).toBeLessThan(0.05);
  });
});
