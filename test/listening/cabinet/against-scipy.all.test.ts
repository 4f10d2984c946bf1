import { expect, it } from "vitest";
import { cabinetFilter } from "../../../src/listening/cabinet/cabinet-filter.ts";
import { cabinetOf } from "../../../src/listening/cabinet/read-cabinet.ts";
import { describeWith } from "../../tools.ts";
import { python } from "../python.ts";
import { response } from "./response.ts";

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
