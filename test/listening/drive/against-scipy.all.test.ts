import { expect, it } from "vitest";
import { realFft } from "../../../src/filter/real-fft.ts";
import { DRIVE_DELAY_SAMPLES } from "../../../src/listening/drive/delay.ts";
import { driven } from "../../../src/listening/drive/driven.ts";
import { driveLaw } from "../../../src/listening/drive/law.ts";
import { describeWith } from "../../tools.ts";
import { python } from "../python.ts";

const REFERENCE = `
import sys, json, numpy as np
from scipy import signal
job = json.load(sys.stdin)
x = np.array(job["samples"])
up = signal.resample_poly(x, 64, 1, window=("kaiser", 12.0))
y = job["volts"] * np.tanh(job["perVolt"] * up)
y = signal.resample_poly(y, 1, 64, window=("kaiser", 12.0))
print(json.dumps(y.tolist()))
`;

describeWith("scipy", "the driven amplifier against scipy.signal", () => {
  it("is a tanh by NumPy, 64 times oversampled, within -70 dB of its peak", () => {
    // Up to 6 kHz: what lies near the edge of the band is cut by each in its own way.
    const samples = Float32Array.from({ length: 6000 }, (_, n) => {
      const fade = Math.min(1, n / 600, (5999 - n) / 600);
      return 0.2 * fade * (Math.sin(0.05 * n) + 0.4 * Math.sin(0.31 * n + 1) + 0.2 * Math.sin(0.77 * n));
    });
    const wanted = python<number[]>(REFERENCE, { samples: [...samples], ...driveLaw(5) });
    const found = driven(samples, 5);
    const bandOf = (sound: (n: number) => number) => {
      const spectrum = new Float64Array(8192 + 2);
      realFft(8192).forward(
        spectrum,
        Float64Array.from({ length: 8192 }, (_, n) => sound(n)),
      );
      return spectrum.subarray(0, 2 * Math.floor(0.7 * 4096));
    };
    const ours = bandOf((n) => found[n + DRIVE_DELAY_SAMPLES] ?? 0);
    const theirs = bandOf((n) => wanted[n] ?? 0);
    const most = Math.max(...theirs.map(Math.abs));
    expect(Math.max(...ours.map((value, k) => Math.abs(value - theirs[k]!)))).toBeLessThan(most * 3e-4);
  });
});
