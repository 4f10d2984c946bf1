import { describe, expect, it } from "vitest";
import { SPEAKER } from "../../../src/listening/speaker/figures.ts";
import { speakerFilter } from "../../../src/listening/speaker/filter.ts";
import { speakerDecibels } from "../../../src/listening/speaker/response.ts";
import { describeWith } from "../../tools.ts";
import { python } from "../python.ts";

const COMPARE = `
import sys, json, numpy as np
from scipy import signal
job = json.load(sys.stdin)
speaker = job["speaker"]
f = np.geomspace(20, 18000, 400)
def through(b, a): return signal.freqs(b, a, 2*np.pi*f)[1]
hp, bell, lp = speaker["highPass"], speaker["presence"], speaker["lowPass"]
w = 2*np.pi*hp["hertz"]
analog = through([1, 0, 0], [1, w/hp["q"], w*w])
w = 2*np.pi*bell["hertz"]
A = 10**(bell["decibels"]/40)
analog = analog * through([1, A*w/bell["q"], w*w], [1, w/(A*bell["q"]), w*w])
analog = analog * through(*signal.butter(lp["order"], 2*np.pi*lp["hertz"], analog=True))
dB = lambda h: 20*np.log10(np.abs(h))
def against(taps, delay, rate):
    fir = signal.freqz(taps, 1, worN=f, fs=rate)[1] * np.exp(2j*np.pi*f*delay/rate)
    return [float(np.max(np.abs(dB(fir) - dB(analog)))), float(np.max(np.abs(np.degrees(np.angle(fir/analog)))))]
print(json.dumps({
  "filters": [against(**each) for each in job["filters"]],
  "frequencies": f.tolist(), "decibels": dB(analog).tolist(),
}))
`;

interface Compared {
  readonly filters: readonly (readonly [decibels: number, degrees: number])[];
  readonly frequencies: readonly number[];
  readonly decibels: readonly number[];
}

describeWith("scipy", "the stated speaker against scipy.signal", () => {
  it("the analogue sections' freqs is the stated curve, and at every rate the filter's freqz within 0.05 dB, 20 Hz to 18 kHz", () => {
    const filters = [44_100, 48_000, 96_000, 192_000].map((rate) => {
      const { taps, delaySamples } = speakerFilter(rate);
      return { taps: [...taps], delay: delaySamples, rate };
    });
    const found = python<Compared>(COMPARE, { speaker: SPEAKER, filters });
    for (const [decibels, degrees] of found.filters) {
      expect(decibels).toBeLessThan(0.05);
      expect(degrees).toBeLessThan(0.5);
    }
    for (const [i, frequency] of found.frequencies.entries())
      expect(speakerDecibels(frequency)).toBeCloseTo(found.decibels[i]!, 9);
  });
});

describe("the stated speaker", () => {
  it("falls by 12 dB an octave below its resonance", () => {
    expect(speakerDecibels(20) - speakerDecibels(10)).toBeGreaterThan(11.5);
    expect(speakerDecibels(20) - speakerDecibels(10)).toBeLessThan(12.5);
  });

  it("rises by 4 dB about 3 kHz", () => {
    const about = [2500, 3000, 3500].map((f) => speakerDecibels(f) - speakerDecibels(400));
    for (const rise of about) expect(rise).toBeGreaterThan(3);
    expect(Math.max(...about)).toBeLessThan(4.2);
  });

  it("falls by more than 24 dB in every octave from 5 kHz on", () => {
    for (const from of [5000, 6000, 8000, 10_000])
      expect(speakerDecibels(from) - speakerDecibels(2 * from)).toBeGreaterThan(24);
  });
});
