import { afterAll, beforeAll, describe, expect, test } from "vitest";
import {
  MAX_HARMONICS,
  MAX_MICROTESLA,
  MAX_NOISE_NANOVOLTS,
  MAX_NOISE_PICOAMPERES,
  MAX_NOISE_SETTINGS,
  MAX_VOLTS_PER_METRE,
} from "../../../src/limits.ts";
import { buildApp } from "../../../src/server/app.ts";
import { onePickup } from "../../fixtures/circuits.ts";
import { PLAN } from "../plan.ts";

let app: Awaited<ReturnType<typeof buildApp>>;
beforeAll(async () => {
  app = await buildApp({ logLevel: "silent", workers: 1, trustProxy: false });
});
afterAll(() => app.close());

const post = (url: string, payload: object) => app.inject({ method: "POST", url, payload });
const link = async () => (await post("/api/link", { build: PLAN })).json().code as string;

describe("POST /api/noise", () => {
  test("tells hum and hiss of every position, and what would help", async () => {
    const { statusCode, payload } = await post("/api/noise", { build: PLAN });
    const { answer, positions, field, amplifier, basis } = JSON.parse(payload);
    expect(statusCode).toBe(200);
    expect(answer).toMatch(
      /^Most hum is in position \d: \d+ dB under a strummed chord, mostly by its coils; the hiss is \d+ dB/,
    );
    expect(field).toEqual({ microtesla: 0.2, voltsPerMetre: 10, harmonics: 1 });
    // A triode of 2.5/gm and 34 kΩ before it.
    expect(amplifier.nanovolts).toBeCloseTo(1e9 * Math.sqrt(4 * 1.380649e-23 * 293.15 * 35_562.5), 3);
    expect(positions.map(({ position }: { position: number }) => position)).toEqual([1, 2, 3, 4, 5]);
    for (const { hum, hiss, playing, remedies } of positions) {
      expect(hum.sum.decibels).toBeCloseTo(20 * Math.log10(hum.sum.microvolts / playing.microvolts), 6);
      expect(hiss.sum.microvolts).toBeCloseTo(Math.hypot(hiss.circuit.microvolts, hiss.amplifier.microvolts), 6);
      expect(remedies.map(({ name }: { name: string }) => name)).toContain("shielded-cavity");
    }
    expect(basis.coils).toContain("±3 dB");
  });

  test("hum goes with the field, hiss does not", async () => {
    const [weak, strong] = await Promise.all(
      [0.1, 1].map(async (microtesla) => {
        const field = { microtesla, voltsPerMetre: 0 };
        const reply = await post("/api/noise", { build: PLAN, hum: "60", field, sweep: { lever: [5] } });
        return reply.json().positions[0];
      }),
    );
    expect(strong.hum.sum.microvolts / weak.hum.sum.microvolts).toBeCloseTo(10, 6);
    expect(strong.hum.runs.microvolts).toBe(0);
    expect(strong.hiss).toEqual(weak.hiss);
  });

  test("refuses more settings, and more lugs in use, than it works out", async () => {
    const dials = Array.from({ length: 41 }, (_, index) => index / 4);
    const sweep = { lever: [1, 2, 3, 4, 5], tone: dials };
    for (const [url, more] of [
      ["/api/noise", {}],
      ["/api/previews", { signal: "click", noise: { hiss: true } }],
    ] as const) {
      const reply = await post(url, { build: PLAN, sweep, ...more });
      expect(reply.json().errors).toEqual([
        { path: "sweep", message: `asks for the noise of 205 settings; expected at most ${MAX_NOISE_SETTINGS}` },
      ]);
    }
    const build = onePickup() as { parts: object };
    const lossy = {
      resistance: "1k",
      inductance: 1,
      loss: Array.from({ length: 8 }, () => ({ resistance: "1M", inductance: 1 })),
    };
    const pickups = Object.fromEntries(
      Array.from({ length: 30 }, (_, index) => [`p${index}`, { kind: "pickup", coils: { one: lossy, two: lossy } }]),
    );
    const huge = await post("/api/noise", { build: { ...build, parts: { ...build.parts, ...pickups } } });
    expect(huge.json().errors[0]).toMatchObject({
      path: "build.wires",
      message: expect.stringContaining("at most 400"),
    });
  });

  test.each([
    [{ hum: "400" }, "hum"],
    [{ field: { microtesla: -1 } }, "field.microtesla"],
    [{ field: { tesla: 1 } }, "field.tesla"],
    [{ field: { microtesla: MAX_MICROTESLA + 1 } }, "field.microtesla"],
    [{ field: { voltsPerMetre: MAX_VOLTS_PER_METRE + 1 } }, "field.voltsPerMetre"],
    [{ field: { harmonics: MAX_HARMONICS + 1 } }, "field.harmonics"],
    [{ amplifier: { nanovolts: MAX_NOISE_NANOVOLTS + 1 } }, "amplifier.nanovolts"],
    [{ amplifier: { picoamperes: MAX_NOISE_PICOAMPERES + 1 } }, "amplifier.picoamperes"],
    [{ settings: { lever: 9 } }, "settings.lever"],
  ])("refuses %j by the field", async (more, path) => {
    const reply = await post("/api/noise", { build: PLAN, ...more });
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors[0].path).toBe(path);
  });
});

describe("noise in a preview", () => {
  const click = { build: PLAN, settings: { lever: 5 }, signal: "click", encoding: "float32" };

  test("is named in the headers, the same from an address, and louder than none", async () => {
    const noisy = await post("/api/preview", { ...click, noise: { hum: "50", hiss: true } });
    expect(noisy.headers["presolder-noise"]).toMatch(
      /^hum of 50 Hz in coils, loops and open wires, 0.2 uT and 10 V\/m; hiss of the circuit and an input of 24 nV\/rtHz/,
    );
    const query = "lever=5&signal=click&encoding=float32&noise=50&hiss=on";
    const coded = await app.inject({ url: `/api/preview.wav?build=${await link()}&${query}` });
    expect(coded.rawPayload.equals(noisy.rawPayload)).toBe(true);
    const plain = await post("/api/preview", click);
    expect(plain.headers["presolder-noise"]).toBeUndefined();
    expect(plain.rawPayload.equals(noisy.rawPayload)).toBe(false);
    const none = await post("/api/preview", { ...click, noise: {} });
    expect(none.rawPayload.equals(plain.rawPayload)).toBe(true);
  });

  test("hum asked for in both ways is refused", async () => {
    const reply = await post("/api/preview", { ...click, hum: 50, noise: { hum: "50" } });
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors).toEqual([{ path: "hum", message: "expected `noise` or the older `hum`, not both" }]);
  });
});
