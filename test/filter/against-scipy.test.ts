import { spawnSync } from "node:child_process";
import { expect, it } from "vitest";
import { createConvolver } from "../../src/filter/convolve.ts";
import { impulseResponse } from "../../src/filter/impulse-response.ts";
import { createQuickConvolver } from "../../src/filter/quick-convolve.ts";
import { describeWith } from "../tools.ts";
import { rational } from "./circuits.ts";

function python(script: string, input: unknown): unknown {
  const run = spawnSync("/usr/bin/python3", ["-c", script], {
    input: JSON.stringify(input),
    encoding: "utf8",
    maxBuffer: 2 ** 28,
  });
  if (run.status !== 0) throw new Error(run.stderr);
  return JSON.parse(run.stdout);
}

const COMPARE_RESPONSES = `
import sys, json, numpy as np
from scipy import signal
job = json.load(sys.stdin)
f = np.geomspace(20, 18000, 300)
w, fir = signal.freqz(job["taps"], 1, worN=f, fs=job["rate"])
w, analog = signal.freqs(job["num"], job["den"], 2*np.pi*f)
fir = fir * np.exp(2j*np.pi*f*job["delay"]/job["rate"])
print(json.dumps(float(np.max(np.abs(fir/analog - 1)))))
`;

const CONVOLVE = `
import sys, json, numpy as np
from scipy import signal
job = json.load(sys.stdin)
total = sum(signal.oaconvolve(np.array(x), np.array(h)) for x, h in zip(job["inputs"], job["filters"]))
print(json.dumps(total.tolist()))
`;

describeWith("scipy", "the filters against scipy.signal", () => {
  // A resonance of Q 3 at 4.5 kHz and a 5.5 ms pole-zero pair, multiplied out; descending powers of s.
  const w = 2 * Math.PI * 4500;
  const numerator = [5.6e-3, 1];
  const denominator = [5.5e-3 / (w * w), 5.5e-3 / (3 * w) + 1 / (w * w), 5.5e-3 + 1 / (3 * w), 1];

  it.each([44_100, 48_000, 96_000])(
    "freqz of the taps equals freqs of the analog circuit within 0.002 dB at %d Hz",
    (rate) => {
      const { taps, delaySamples } = impulseResponse(rational(numerator, denominator), rate);
      const job = { taps: [...taps], delay: delaySamples, rate, num: numerator, den: denominator };
      // 0.002 dB is a relative error of 2.3e-4.
      expect(python(COMPARE_RESPONSES, job)).toBeLessThan(2.3e-4);
    },
  );

  it.each([
    ["in double precision", createConvolver, 1e-7],
    // The sum reaches 3; ten roundings to 24 bits.
    ["by SIMD", createQuickConvolver, 2e-6],
  ])("oaconvolve gives the same sum of three sources %s", (_, create, tolerance) => {
    const inputs = [1, 2, 3].map((k) =>
      Float32Array.from({ length: 30_000 }, (_, n) => Math.sin(0.01 * k * n + n * n * 1e-6)),
    );
    const filters = [1, 2, 3].map((k) =>
      Float64Array.from({ length: 1100 }, (_, n) => Math.cos(k * n) * Math.exp(-n / 200) * 0.01),
    );
    const wanted = python(CONVOLVE, {
      inputs: inputs.map((x) => [...x]),
      filters: filters.map((h) => [...h]),
    }) as number[];
    const actual = create(inputs, 1100).render(filters);
    expect(actual.length).toBe(wanted.length);
    for (let n = 0; n < actual.length; n++)
      if (!(Math.abs(actual[n]! - wanted[n]!) < tolerance)) expect(actual[n]).toBe(wanted[n]);
  });
});
