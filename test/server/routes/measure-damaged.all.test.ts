import { describe, expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import type { MeasureRequest } from "../../../src/contract/measure/measure.ts";
import { measuringSignal } from "../../../src/measure/signal/measuring-signal.ts";
import { heardThrough, recorded } from "../../measure/simulated-recording.ts";
import { multipart, useService } from "../service.ts";

const RATE_HZ = 44_100;
const service = useService();

const PLAYED = measuringSignal("sweep", RATE_HZ);
const SOUND = recorded(PLAYED, RATE_HZ, { gain: 0.3, noise: 3e-5, bits: 24 });

const wav = (channels: readonly Float32Array[], sampleRateHz = RATE_HZ) =>
  encodeWav({ sampleRateHz, channels: [...channels] }, "pcm24");

const REQUESTS = {
  unloaded: { method: "two-loads", load: { resistance: 200e3 }, resistance: 8000 },
  measured: { method: "series-resistor", part: "coil", resistor: "10k" },
  referenceCoil: {
    method: "exciter",
    coil: { resistance: "8k", inductance: "4H", capacitance: "120pF" },
    reference: { kind: "coil", coil: { resistance: "6.6k", inductance: "2.6H", capacitance: "130pF" } },
  },
} satisfies Record<string, MeasureRequest>;

/** The recording in the field that each method reads it from, whatever else it needs beside it good. */
async function refusalOf(field: keyof typeof REQUESTS, samples: Float32Array, sampleRateHz = RATE_HZ) {
  const channels = field === "measured" ? [samples, samples] : [samples];
  const others = { unloaded: ["loaded"], measured: [], referenceCoil: ["unloaded"] }[field];
  const form = multipart([
    { name: "request", content: JSON.stringify(REQUESTS[field]) },
    { name: field, content: wav(channels, sampleRateHz), filename: "a.wav" },
    ...others.map((name) => ({ name, content: wav([SOUND]), filename: "b.wav" })),
  ]);
  const reply = await service.app.inject({ method: "POST", url: "/api/measure", ...form });
  return [reply.statusCode, reply.json().detail] as const;
}

/** Chords of a few notes that come and go. */
const MUSIC = SOUND.map((_, n) => {
  const [t, bar] = [n / RATE_HZ, Math.floor(n / RATE_HZ / 2)];
  const notes = [110, 165, 220, 277].map((hz) => hz * 2 ** ((bar % 4) / 12));
  return 0.1 * Math.exp(-2 * (t % 0.5)) * notes.reduce((sum, hz) => sum + Math.sin(2 * Math.PI * hz * t), 0);
});
/** Twenty thousandths of a second are missing at each of these times. */
const HOLES = [3, 8, 13];
const LOST = SOUND.filter((_, n) => !HOLES.some((at) => n > at * RATE_HZ && n < (at + 0.02) * RATE_HZ));
/** What a program put in place of what was lost: one value, in every pass. */
const FILLED = SOUND.map((each, n) =>
  HOLES.some((at) => n > at * RATE_HZ && n < (at + 0.01) * RATE_HZ) ? 0.01 : each,
);

describe.each(["unloaded", "measured", "referenceCoil"] as const)(
  "POST /api/measure names what is wrong with `%s`",
  (field) => {
    it.each([
      ["is clipped in all three passes", SOUND.map((each) => Math.max(-0.11, Math.min(0.11, 4 * each))), "gain down"],
      ["has lost samples in more than one place", LOST, "buffer larger"],
      ["has lost samples in more than one place", FILLED, "buffer larger"],
      ["is silent", SOUND.map(() => 0), "Choose the input"],
      ["does not hold the measuring signal", MUSIC, "Play the signal file itself"],
      ["ends before the signal does", SOUND.slice(0, 9 * RATE_HZ), "Start to record first"],
      ["changes its gain by itself", SOUND.map((each, n) => each * (n > 6 * RATE_HZ ? 1.5 : 1)), "automatic gain"],
    ] as const)("which %s, and what to do", async (why, samples, remedy) => {
      const [status, detail] = await refusalOf(field, samples);
      expect(status, detail).toBe(422);
      expect(detail).toMatch(new RegExp(`^${field}: the recording ${why}.*${remedy}`));
    });

    it("which was labelled with another rate, or has one that no signal is made for", async () => {
      const [status, detail] = await refusalOf(field, SOUND, 48_000);
      expect([status, detail]).toEqual([422, expect.stringMatching(/runs at another rate than it says.*% too short/)]);
      const [low, rate] = await refusalOf(field, SOUND.slice(0, RATE_HZ), 22_050);
      expect([low, rate]).toEqual([400, expect.stringContaining("has a sample rate of 22050 Hz; expected 44100")]);
    });
  },
);

describe("POST /api/measure by two channels", () => {
  it("names channels that are swapped, and channels of two sounds of which nobody says which is which", async () => {
    const half = SOUND.map((each) => each / 2);
    const swapped = multipart([
      { name: "request", content: JSON.stringify(REQUESTS.measured) },
      { name: "measured", content: wav([half, SOUND]), filename: "a.wav" },
    ]);
    const behind = await service.app.inject({ method: "POST", url: "/api/measure", ...swapped });
    expect([behind.statusCode, behind.json().detail]).toEqual([422, expect.stringMatching(/^measured: .*swapped/)]);
    const other = heardThrough(MUSIC, RATE_HZ, { seed: 3 }).slice(0, SOUND.length);
    const unlike = multipart([
      { name: "request", content: JSON.stringify(REQUESTS.unloaded) },
      { name: "unloaded", content: wav([SOUND, other]), filename: "a.wav" },
      { name: "loaded", content: wav([SOUND]), filename: "b.wav" },
    ]);
    const reply = await service.app.inject({ method: "POST", url: "/api/measure", ...unlike });
    expect([reply.statusCode, reply.json().detail]).toEqual([
      422,
      expect.stringMatching(/^unloaded: has two channels with different sound in them; say in `reference` which/),
    ]);
  });
});
