import { describe, expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { type MeasureRequest, measureAnswerSchema, type RecordingName } from "../../../src/contract/measure/measure.ts";
import { measuringSignal } from "../../../src/measure/signal/measuring-signal.ts";
import { behindOhms, capacitorPart, coilPart, nothing, type Part } from "../../measure/simulated-jig.ts";
import { filtered, recorded } from "../../measure/simulated-recording.ts";
import { multipart, useService } from "../service.ts";

const RATE_HZ = 44_100;
const OHMS = 100e3;
const FARADS = 3.3e-9;
const service = useService();
const PLAYED = measuringSignal("multitone", RATE_HZ);

function take(part: Part, seed: number): Uint8Array {
  const world = { gain: 0.8, noise: 1e-5, bits: 24 } as const;
  const channels = [
    recorded(PLAYED, RATE_HZ, { ...world, seed }),
    recorded(filtered(PLAYED, RATE_HZ, behindOhms(OHMS, part)), RATE_HZ, { ...world, seed: seed + 50 }),
  ];
  return encodeWav({ sampleRateHz: RATE_HZ, channels }, "pcm24");
}

const CAPACITOR = take(capacitorPart(FARADS), 3);
const OPEN = take(nothing, 5);

function measure(request: Partial<MeasureRequest>, files: Partial<Record<RecordingName, Uint8Array>>) {
  const whole = { method: "series-resistor", part: "capacitor", resistor: OHMS, signal: "multitone", ...request };
  const parts = Object.entries(files).map(([name, content]) => ({ name, content, filename: `${name}.wav` }));
  const form = multipart([{ name: "request", content: JSON.stringify(whole) }, ...parts]);
  return service.app.inject({ method: "POST", url: "/api/measure", ...form });
}

async function answered(...asked: Parameters<typeof measure>) {
  const reply = await measure(...asked);
  expect(reply.statusCode, reply.body).toBe(200);
  const answer = measureAnswerSchema.parse(reply.json());
  if (answer.method !== "series-resistor") throw new Error(answer.method);
  return answer;
}

describe("POST /api/measure behind a resistor whose input nobody measured", () => {
  it("says that the input is in the values, and widens their errors until they hold the truth", async () => {
    const [known, unknown, stated] = [
      await answered({}, { measured: CAPACITOR, open: OPEN }),
      await answered({}, { measured: CAPACITOR }),
      await answered({ input: { resistance: "1M", capacitance: "160pF" } }, { measured: CAPACITOR }),
    ];
    expect(known.notes).toEqual([expect.stringMatching(/^Without a recording of both inputs on one point .*3 %/)]);
    expect(known.scaleError).toBeCloseTo(0.04, 9);
    expect(known.input!.resistance! / 1e6).toBeCloseTo(1, 1);
    expect(known.input!.capacitance! / 160e-12).toBeCloseTo(1, 1);
    expect(unknown.notes.join()).toMatch(/^The input.s own resistance and capacitance.*errors are widened for it/);
    expect(stated.notes.join()).toMatch(/taken out as stated, without an error/);
    const off = ({ capacitance }: typeof known) => capacitance!.value - FARADS;
    expect(off(unknown)).toBeGreaterThan(20 * known.capacitance!.standardError);
    expect(Math.abs(off(unknown))).toBeLessThan(2 * unknown.capacitance!.standardError);
    expect(Math.abs(off(known))).toBeLessThan(0.003 * FARADS);
    expect(Math.abs(off(stated))).toBeLessThan(0.003 * FARADS);
  });

  it("names what was measured as another part, and recordings that are exchanged", async () => {
    const refused = async (...asked: Parameters<typeof measure>) => {
      const reply = await measure(...asked);
      return [reply.statusCode, reply.json().detail];
    };
    expect(await refused({ part: "coil" }, { measured: CAPACITOR, open: OPEN })).toEqual([
      422,
      expect.stringMatching(/^part: what was measured is no coil; it looks like a capacitor or a lead/),
    ]);
    expect(await refused({}, { measured: take(coilPart, 9), open: OPEN })).toEqual([
      422,
      expect.stringMatching(/^part: what was measured is no capacitor; it looks like a coil.*Say part: coil/),
    ]);
    expect(await refused({}, { measured: OPEN, open: CAPACITOR })).toEqual([
      422,
      expect.stringMatching(
        /^measured: .*the two recordings are exchanged, or the part was in neither\. Send each as the other/,
      ),
    ]);
  });
});
