import { describe, expect, it } from "vitest";
import { decodeWav } from "../../../src/audio/wav-decode.ts";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { coilImpedance } from "../../../src/choice/fit/coil-model.ts";
import { type MeasureRequest, measureAnswerSchema, type RecordingName } from "../../../src/contract/measure/measure.ts";
import { thoroughly } from "../../effort.ts";
import {
  admittance,
  COIL,
  type Complex,
  heardUnder,
  INPUT,
  LOAD,
  over,
  times,
} from "../../measure/simulated-pickup.ts";
import { filtered, recorded } from "../../measure/simulated-recording.ts";
import { multipart, useService } from "../service.ts";

const RATE_HZ = 48_000;
const service = useService();

async function playedSignal(kind: string): Promise<Float32Array> {
  const reply = await service.app.inject({ url: `/api/sweep.wav?kind=${kind}&rate=${RATE_HZ}` });
  expect(reply.headers["content-type"]).toBe("audio/wav");
  return decodeWav(reply.rawPayload).channels[0]!;
}

const wav = (...channels: Float32Array[]) => encodeWav({ sampleRateHz: RATE_HZ, channels }, "pcm24");

function measure(request: MeasureRequest, files: Partial<Record<RecordingName, Uint8Array>>) {
  const parts = Object.entries(files).map(([name, content]) => ({ name, content, filename: `${name}.wav` }));
  const form = multipart([{ name: "request", content: JSON.stringify(request) }, ...parts]);
  return service.app.inject({ method: "POST", url: "/api/measure", ...form });
}

describe("POST /api/measure", () => {
  it("finds a coil from its recordings with and without a load, through an exciter, hiss, hum and another clock", async () => {
    const signal = await playedSignal("sweep");
    const world = { gain: 0.3, noise: 3e-5, hum: { hz: 50, peak: 1e-3 }, bits: 24 } as const;
    const unloaded = recorded(signal, RATE_HZ, { ...world, transfer: heardUnder(INPUT), driftPpm: 40 });
    const loaded = recorded(signal, RATE_HZ, {
      ...world,
      transfer: heardUnder(INPUT, LOAD),
      delaySeconds: 1.02,
      seed: 9,
    });
    const request: MeasureRequest = {
      method: "two-loads",
      load: LOAD,
      across: INPUT,
      resistance: COIL.resistance,
    };
    const reply = await measure(request, { unloaded: wav(unloaded), loaded: wav(loaded) });
    expect(reply.statusCode, reply.body).toBe(200);
    const answer = measureAnswerSchema.parse(reply.json());
    if (answer.method !== "two-loads") throw new Error(answer.method);
    const { fit, recordings } = answer;
    expect(recordings.map(({ file, drift, leftOut }) => [file, drift, leftOut])).toEqual([
      ["unloaded", expect.closeTo(40, 0), []],
      ["loaded", expect.closeTo(0, 0), []],
    ]);
    expect(Math.abs(fit.lowFrequencyInductance.value / 4.08 - 1)).toBeLessThan(0.01);
    const peakOf = (values: typeof COIL) => {
      const grid = Array.from({ length: 4000 }, (_, k) => 1000 * 10 ** (k / 3000));
      const sizes = grid.map((hz) => Math.hypot(...Object.values(coilImpedance(values, hz))));
      const top = sizes.indexOf(Math.max(...sizes));
      return { hz: grid[top]!, ohms: sizes[top]! };
    };
    const [found, truth] = [peakOf(fit.coil as typeof COIL), peakOf(COIL)];
    expect(Math.abs(found.hz / truth.hz - 1)).toBeLessThan(0.01);
    expect(Math.abs(found.ohms / truth.ohms - 1)).toBeLessThan(0.05);

    const itself = recorded(signal, RATE_HZ, { ...world, delaySeconds: 1.02, seed: 11 });
    const both = wav(itself, loaded);
    const swapped = await measure({ ...request, reference: "second" }, { unloaded: both, loaded: both });
    expect([swapped.statusCode, swapped.json().detail]).toEqual([
      422,
      expect.stringMatching(/^unloaded: .*channels are swapped.*reference: first/),
    ]);
  });

  thoroughly(
    "finds a capacitor, its loss and by how much both may be off behind a resistor, the rig taken out",
    async () => {
      const signal = await playedSignal("multitone");
      const OHMS = 4700;
      const FARADS = 22.4e-9;
      const LOSS = 0.008;
      const gain: Complex = [0.98, 0.01];
      const behind = (y: (hz: number) => Complex) => (hz: number) => {
        const [g, b] = y(hz);
        const [gi, bi] = admittance(INPUT, hz);
        return times(gain, over([1, 0], [1 + OHMS * (g + gi), OHMS * (b + bi)]));
      };
      const capacitor = (hz: number): Complex => {
        const b = 2 * Math.PI * hz * FARADS;
        return [LOSS * b, b];
      };
      const take = (transfer: (hz: number) => Complex, seed: number) => {
        const common = { gain: 0.8, noise: 1e-5, bits: 24 } as const;
        const before = recorded(signal, RATE_HZ, { ...common, seed });
        return wav(before, recorded(filtered(signal, RATE_HZ, transfer), RATE_HZ, { ...common, seed: seed + 50 }));
      };
      const request: MeasureRequest = {
        method: "series-resistor",
        part: "capacitor",
        resistor: OHMS,
        signal: "multitone",
      };
      const files = {
        measured: take(behind(capacitor), 3),
        open: take(
          behind(() => [0, 0]),
          5,
        ),
        gain: take(() => gain, 7),
      };
      const reply = await measure(request, files);
      expect(reply.statusCode, reply.body).toBe(200);
      const answer = measureAnswerSchema.parse(reply.json());
      if (answer.method !== "series-resistor") throw new Error(answer.method);
      expect(Math.abs(answer.capacitance!.value / FARADS - 1)).toBeLessThan(0.002);
      expect(Math.abs(answer.capacitance!.value - FARADS)).toBeLessThan(4 * answer.capacitance!.standardError);
      expect(Math.abs(answer.lossFactor!.value - LOSS)).toBeLessThan(0.001);
      expect(answer.scaleError).toBe(0.01);

      const swapped = await measure({ ...request, channels: "behind-before" }, { measured: files.measured });
      expect([swapped.statusCode, swapped.json().detail]).toEqual([422, expect.stringMatching(/^measured: .*swapped/)]);
    },
  );

  it("names the file that is missing, of no use, no recording of the signal, or of one channel", async () => {
    const silence = wav(new Float32Array(RATE_HZ));
    const twoLoads: MeasureRequest = { method: "two-loads", load: LOAD };
    const missing = (await measure(twoLoads, { unloaded: silence })).json();
    expect(missing.errors).toEqual([{ path: "loaded", message: "is missing; expected a WAV file" }]);
    const idle = (await measure(twoLoads, { unloaded: silence, loaded: silence, gain: silence })).json();
    expect(idle.errors).toEqual([{ path: "gain", message: "has no use here; expected unloaded, loaded" }]);
    const silent = (await measure(twoLoads, { unloaded: silence, loaded: silence })).json();
    expect([silent.status, silent.detail]).toEqual([422, expect.stringMatching(/^unloaded: the recording is silent/)]);
    const request: MeasureRequest = { method: "series-resistor", part: "coil", resistor: "470k" };
    const mono = (await measure(request, { measured: silence })).json();
    expect(mono.errors).toEqual([{ path: "measured", message: "has one channel; expected two" }]);
    const none = (await service.app.inject({ method: "POST", url: "/api/measure", payload: twoLoads })).json();
    expect([none.status, none.detail]).toEqual([400, expect.stringContaining("expected a multipart form")]);
  });
});
