import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { threeSingles } from "../../fixtures/circuits.ts";
import { python } from "../../listening/python.ts";
import { describeWith } from "../../tools.ts";
import { useService, withFile } from "../service.ts";

const service = useService();
const guard = threeSingles();

/** Reads WAVs by SciPy: the chain's response between two of them against its stated figures, and what a driven sine folds back. */
const MEASURE = `
import sys, json, numpy as np
from scipy import signal
from scipy.io import wavfile
job = json.load(sys.stdin)
speaker = job["speaker"]
def analog(f):
    def through(b, a): return signal.freqs(b, a, 2*np.pi*f)[1]
    hp, bell, lp = speaker["highPass"], speaker["presence"], speaker["lowPass"]
    w, v = 2*np.pi*hp["hertz"], 2*np.pi*bell["hertz"]
    A = 10**(bell["decibels"]/40)
    return (through([1, 0, 0], [1, w/hp["q"], w*w]) * through([1, A*v/bell["q"], v*v], [1, v/(A*bell["q"]), v*v])
        * through(*signal.butter(lp["order"], 2*np.pi*lp["hertz"], analog=True)))
def db(h): return 20*np.log10(np.abs(h))
def response(jack, heard):
    rate, x = wavfile.read(jack); _, y = wavfile.read(heard)
    n = 1 << (len(y) - 1).bit_length() + 1
    f = np.fft.rfftfreq(n, 1/rate); band = (f >= 20) & (f <= 18000)
    return float(np.max(np.abs(db(np.fft.rfft(y, n)[band] / np.fft.rfft(x, n)[band]) - db(analog(f[band])))))
def folded(file, hertz):
    rate, x = wavfile.read(file)
    x = x[rate//2:rate//2 + rate] * signal.windows.blackmanharris(rate)
    level = np.abs(np.fft.rfft(x))
    near = lambda k: slice(max(0, k - 6), k + 7)
    fundamental = level[near(hertz)].max()
    for k in range(0, rate//2 + 1, hertz): level[near(k)] = 0
    return float(db(level.max() / fundamental))
print(json.dumps({"responses": [response(*each) for each in job["pairs"]], "folded": [folded(*each) for each in job["sines"]]}))
`;

interface Measured {
  readonly responses: readonly number[];
  readonly folded: readonly number[];
}

describeWith("scipy", "sound files heard through the chain, measured by scipy.signal", () => {
  it("have the stated response within 0.1 dB from 20 Hz to 18 kHz, and fold back less than -80 dB", async () => {
    const folder = mkdtempSync(join(tmpdir(), "presolder-"));
    try {
      let count = 0;
      const keep = (bytes: Uint8Array) => {
        const file = join(folder, `${count++}.wav`);
        writeFileSync(file, bytes);
        return file;
      };
      const click = async (rate: number, listening: object) => {
        const payload = { build: guard, signal: "click", rate, encoding: "float32", listening };
        return keep((await service.app.inject({ method: "POST", url: "/api/preview", payload })).rawPayload);
      };
      const sine = async (rate: number, hertz: number) => {
        const samples = Float32Array.from({ length: 2 * rate }, (_, n) => Math.sin((2 * Math.PI * hertz * n) / rate));
        // A first pass through the guard and its own undoing: what is driven is the full scale itself.
        const request = {
          build: guard,
          encoding: "float32",
          recordedWith: { build: guard },
          listening: { chain: "clean", drive: 10 },
        };
        const form = withFile(request, encodeWav({ sampleRateHz: rate, channels: [samples] }, "float32"));
        const reply = await service.app.inject({ method: "POST", url: "/api/preview", ...form });
        expect(reply.statusCode).toBe(200);
        return [keep(reply.rawPayload), hertz] as const;
      };
      const { speaker } = (await service.app.inject({ url: "/api/signals" })).json().listening;
      const pairs = [];
      for (const rate of [44_100, 48_000, 96_000, 192_000])
        pairs.push([await click(rate, { chain: "none" }), await click(rate, { chain: "clean" })]);
      const sines = [await sine(44_100, 5000), await sine(48_000, 5000), await sine(48_000, 1237)];
      const found = python<Measured>(MEASURE, { speaker, pairs, sines });
      expect(Math.max(...found.responses)).toBeLessThan(0.1);
      expect(Math.max(...found.folded)).toBeLessThan(-80);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});
