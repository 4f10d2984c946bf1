import { describe, expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { type MeasureRequest, measureAnswerSchema, type RecordingName } from "../../../src/contract/measure/measure.ts";
import { measuringSignal } from "../../../src/measure/signal/measuring-signal.ts";
import { thoroughly } from "../../effort.ts";
import { bare, exciterAt, heardFrom, pole, product, ROD_COIL, shelf } from "../../measure/simulated-metal.ts";
import { COIL, type Complex, LOAD, over } from "../../measure/simulated-pickup.ts";
import { recorded } from "../../measure/simulated-recording.ts";
import { multipart, useService } from "../service.ts";

const RATE_HZ = 48_000;
const INPUT = { resistance: 1e6, capacitance: 150e-12 };
/** Hiss at −90 dB, hum at −60. */
const WORLD = { gain: 0.3, noise: 3e-5, hum: { hz: 50, peak: 1e-3 }, bits: 24 } as const;
const EXCITER_HZ = 3400;
const DRIFT_PPM = 30;
const service = useService();

type Files = Partial<Record<RecordingName, Uint8Array>>;
type Exciter = Extract<MeasureRequest, { method: "exciter" }>;

const SIGNAL = measuringSignal("sweep", RATE_HZ);
let seed = 3;

function heard(transfer: (hz: number) => Complex, driftPpm = 0): Uint8Array {
  seed += 1;
  const channels = [recorded(SIGNAL, RATE_HZ, { ...WORLD, transfer, driftPpm, seed })];
  return encodeWav({ sampleRateHz: RATE_HZ, channels }, "pcm24");
}

const behind = (law: (hz: number) => Complex) => product(exciterAt(EXCITER_HZ), law);

function measure(request: object, files: Files) {
  const parts = Object.entries(files).map(([name, content]) => ({ name, content, filename: `${name}.wav` }));
  const form = multipart([{ name: "request", content: JSON.stringify(request) }, ...parts]);
  return service.app.inject({ method: "POST", url: "/api/measure", ...form });
}

async function answered(request: Exciter, files: Files) {
  const reply = await measure(request, files);
  expect(reply.statusCode, reply.body).toBe(200);
  const answer = measureAnswerSchema.parse(reply.json());
  if (answer.method !== "exciter") throw new Error(answer.method);
  return answer;
}

const REQUEST = {
  method: "exciter",
  coil: COIL,
  across: INPUT,
  reference: { kind: "coil", coil: ROD_COIL },
} satisfies Exciter;

describe("POST /api/measure by an exciter", () => {
  thoroughly("tells a cover's pole over a coil on rods, the pickup's own coil found by a load", async () => {
    const referenceCoil = heard(heardFrom(ROD_COIL, behind(bare), INPUT), DRIFT_PPM);
    const unloaded = heard(heardFrom(COIL, behind(pole(3500)), INPUT));
    const loaded = heard(heardFrom(COIL, behind(pole(3500)), INPUT, LOAD));
    const { coil: _, ...rest } = REQUEST;
    const files = { unloaded, loaded, referenceCoil };
    const answer = await answered({ ...rest, load: LOAD, resistance: COIL.resistance, loss: "one-section" }, files);
    expect(answer.law).toBe("pole");
    const [{ value, standardError, low, high }] = answer.values as [(typeof answer.values)[number]];
    expect(standardError).toBeLessThan(0.02 * value);
    expect(low).toBeLessThan(3500);
    expect(high).toBeGreaterThan(3500);
    expect(answer.shielding).toEqual([{ pole: value }]);
    expect(answer.recordings.map(({ file, drift }) => [file, Math.round(drift) + 0])).toEqual([
      ["unloaded", 0],
      ["loaded", 0],
      ["referenceCoil", DRIFT_PPM],
    ]);
    expect(answer.fit!.lowFrequencyInductance.value).toBeCloseTo(4.08, 1);
    const { frequencies, decibels, errors } = answer.slope;
    const at = frequencies.findIndex((hz) => hz > 3400 && hz < 3600);
    expect(Math.abs(decibels[at]! + 10 * Math.log10(1 + (frequencies[at]! / 3500) ** 2))).toBeLessThan(
      0.05 + 3 * errors[at]!,
    );
    expect(answer.notes.join()).toContain("1 dB above 3 kHz");
    expect(answer.systematic.at(-1)).toEqual({ frequency: 3000, decibels: 1 });
  });

  thoroughly("tells steel's shelf through an integrator, the exciter's corner known", async () => {
    const CORNER_HZ = 30;
    const through = product(heardFrom(COIL, behind(shelf(1400, 2)), INPUT), (hz) => over([20, 0], [1, hz / CORNER_HZ]));
    const reference = { kind: "integrator", corner: CORNER_HZ, exciterCorner: EXCITER_HZ } as const;
    const answer = await answered({ ...REQUEST, reference }, { unloaded: heard(through) });
    expect(answer.law).toBe("shelf");
    for (const [i, truth] of [1400, 2].entries()) {
      const { low, high, value, standardError } = answer.values[i]!;
      expect(standardError).toBeLessThan(0.05 * value);
      expect(low).toBeLessThan(truth);
      expect(high).toBeGreaterThan(truth);
    }
  });

  it("names what is missing, what has no use and what is unknown", async () => {
    const { coil: _, ...rest } = REQUEST;
    const faults = async (request: object, files: Files) => (await measure(request, files)).json().errors;
    const one = new Uint8Array(1);
    expect(await faults(rest, { unloaded: one })).toEqual([
      {
        path: "load",
        message: "is missing; expected what hung across the pickup in `loaded`, or `coil` with its values",
      },
    ]);
    expect(await faults({ ...REQUEST, load: LOAD }, { unloaded: one })).toEqual([
      { path: "load", message: "has no use where `coil` has the pickup's values; expected one of the two" },
    ]);
    expect(await faults(REQUEST, { unloaded: one })).toEqual([
      { path: "referenceCoil", message: "is missing; expected a WAV file" },
    ]);
    const integrator = { ...REQUEST, reference: { kind: "integrator", corner: "30Hz" } };
    expect(await faults(integrator, { unloaded: one, loaded: one })).toEqual([
      { path: "loaded", message: "has no use here; expected unloaded" },
    ]);
    expect(await faults({ ...REQUEST, reference: { kind: "air" } }, { unloaded: one })).toEqual([
      { path: "reference.kind", message: 'expected an object whose "kind" is "coil" or "integrator"' },
    ]);
  });
});
