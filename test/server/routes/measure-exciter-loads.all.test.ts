import { describe, expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { type MeasureRequest, measureAnswerSchema, type RecordingName } from "../../../src/contract/measure/measure.ts";
import { measuringSignal, type SignalKind } from "../../../src/measure/signal/measuring-signal.ts";
import { bare, exciterAt, heardFrom, pole, product, ROD_COIL } from "../../measure/simulated-metal.ts";
import { COIL, type Complex, LOAD } from "../../measure/simulated-pickup.ts";
import { recorded } from "../../measure/simulated-recording.ts";
import { multipart, useService } from "../service.ts";

const RATE_HZ = 44_100;
const INPUT = { resistance: 1e6, capacitance: 150e-12 };
const SECOND = { resistance: 1e9, capacitance: 10e-9 };
const POLE_HZ = 3500;
const service = useService();
let seed = 20;

function heard(kind: SignalKind, transfer: (hz: number) => Complex): Uint8Array {
  seed += 1;
  const world = { gain: 0.3, noise: 3e-5, hum: { hz: 50, peak: 1e-3 }, bits: 24, seed } as const;
  const channels = [recorded(measuringSignal(kind, RATE_HZ), RATE_HZ, { ...world, transfer })];
  return encodeWav({ sampleRateHz: RATE_HZ, channels }, "pcm24");
}

const through = (law: (hz: number) => Complex) => product(exciterAt(3400), law);
const covered = (kind: SignalKind, ...loads: (typeof SECOND)[]) =>
  heard(kind, heardFrom(COIL, through(pole(POLE_HZ)), INPUT, ...loads));
const reference = (kind: SignalKind) => heard(kind, heardFrom(ROD_COIL, through(bare), INPUT));

async function poleTold(
  request: Omit<Extract<MeasureRequest, { method: "exciter" }>, "method" | "reference">,
  files: Partial<Record<RecordingName, Uint8Array>>,
) {
  const rods = { resistance: "6.6k", inductance: "2.61H", capacitance: "130pF", loss: "700k" };
  const whole = { method: "exciter", across: INPUT, reference: { kind: "coil", coil: rods }, ...request };
  const parts = Object.entries(files).map(([name, content]) => ({ name, content, filename: `${name}.wav` }));
  const form = multipart([{ name: "request", content: JSON.stringify(whole) }, ...parts]);
  const reply = await service.app.inject({ method: "POST", url: "/api/measure", ...form });
  expect(reply.statusCode, reply.body).toBe(200);
  const answer = measureAnswerSchema.parse(reply.json());
  if (answer.method !== "exciter") throw new Error(answer.method);
  expect(answer.law).toBe("pole");
  const { low, high, value, standardError } = answer.values[0]!;
  expect(standardError).toBeLessThan(0.03 * value);
  expect([low < POLE_HZ, high > POLE_HZ]).toEqual([true, true]);
  return answer;
}

describe("POST /api/measure by an exciter tells a cover's pole", () => {
  it("over a coil found by two loads, without a DC resistance", async () => {
    const { fit, recordings } = await poleTold(
      { load: LOAD, second: SECOND, loss: "one-section" },
      {
        unloaded: covered("sweep"),
        loaded: covered("sweep", LOAD),
        second: covered("sweep", SECOND),
        referenceCoil: reference("sweep"),
      },
    );
    expect(recordings.map(({ file }) => file)).toEqual(["unloaded", "loaded", "second", "referenceCoil"]);
    expect(Math.abs(fit!.lowFrequencyInductance.value / 4.08 - 1)).toBeLessThan(0.01);
    expect(Math.abs(fit!.values[0]!.value / COIL.resistance - 1)).toBeLessThan(0.03);
  });

  it("by tones, over values that were typed", async () => {
    const coil = {
      resistance: "8.14k",
      inductance: "3.26H",
      capacitance: "120pF",
      loss: [{ inductance: "820mH", resistance: "11.3k" }],
    };
    const { fit } = await poleTold(
      { coil, signal: "multitone" },
      { unloaded: covered("multitone"), referenceCoil: reference("multitone") },
    );
    expect(fit).toBeUndefined();
  });
});
