import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { SLICES } from "../../../src/choice/slices.ts";
import { python } from "../../listening/python.ts";
import { readScenario } from "../../scenarios/scenarios.ts";
import { useService } from "../../server/service.ts";
import { describeWith } from "../../tools.ts";

const service = useService();
const EAR = readFileSync(new URL("ear.py", import.meta.url), "utf8");

/** Two WAV files, held against each other bin by bin of their spectra. */
const HELD = `${EAR}
import sys, json, io, base64
from scipy.io import wavfile
job = json.load(sys.stdin)
def levels(text):
    rate, x = wavfile.read(io.BytesIO(base64.b64decode(text)))
    x = np.asarray(x, dtype=float)
    size = 2 ** int(np.ceil(np.log2(len(x))))
    return heard(np.fft.rfftfreq(size, 1 / rate), np.abs(np.fft.rfft(x, size)) ** 2, job["through"])
a, b = (levels(text) for text in job["sounds"])
print(json.dumps({"difference": list(b - a), "edges": list(bands())}))
`;

const ROWS = [
  ["hss-250k-or-500k.json", { lever: 1 }, "speaker"],
  ["tone-cap-22-or-47.json", { lever: 5, tone1: 2 }, "speaker"],
  ["long-cable.json", { lever: 4, volume: 7 }, "none"],
] as const;

describeWith("scipy", "what is heard to differ, from rendered sounds by SciPy", () => {
  it.each(ROWS)(
    "of %s in %o through %s is what the comparison gives in every band",
    async (file, settings, through) => {
      const { build, compareWith } = readScenario(file);
      const builds = [build, compareWith!];
      const common = { settings, signal: "strum" };
      const sounds = await Promise.all(
        builds.map(async (each) => {
          const payload = { build: each, ...common, encoding: "float32" };
          const reply = await service.app.inject({ method: "POST", url: "/api/preview", payload });
          expect(reply.statusCode).toBe(200);
          return reply.rawPayload.toString("base64");
        }),
      );
      const asked = { builds, ...common, through, tolerance: false };
      const reply = await service.app.inject({ method: "POST", url: "/api/compare", payload: asked });
      const { weighed } = reply.json().rows[0];
      const { difference, edges } = python<{ difference: number[]; edges: number[] }>(HELD, { sounds, through });
      for (const [band, { low, high }] of SLICES.bands.entries()) {
        expect(low).toBeCloseTo(edges[band]!, 6);
        expect(high).toBeCloseTo(edges[band + 1]!, 6);
        // Bins against slices of a quarter band.
        expect(Math.abs(weighed.difference[band] - difference[band]!), `${low} Hz`).toBeLessThan(0.1);
      }
      const most = difference.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a));
      expect(Math.abs(most)).toBeGreaterThan(2);
      expect(Math.abs(weighed.largest.difference - most)).toBeLessThan(0.05);
    },
  );
});
