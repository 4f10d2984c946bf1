import { describe, expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { type TapsRequest, tapsAnswerSchema } from "../../../src/contract/measure/taps.ts";
import { MAX_TAP_SECONDS } from "../../../src/limits.ts";
import { measuringSignal } from "../../../src/measure/signal/measuring-signal.ts";
import { planTaps } from "../../../src/measure/taps/plan-taps.ts";
import { scenarioBuilds } from "../../bench/scenario-builds.ts";
import { START_SECONDS, withTurned } from "../../measure/taps/tap-trials.ts";
import { tappedTake } from "../../measure/taps/tapped-guard.ts";
import { multipart, useService } from "../service.ts";

const RATE_HZ = 44_100;
const BUILD = scenarioBuilds.find(({ name }) => name === "tone-before-or-after-volume")!.build;
const TAKE = tappedTake(withTurned(BUILD, "neck", undefined), planTaps(BUILD), { rateHz: RATE_HZ, seed: 4 });
const service = useService();

const wav = (samples: Float32Array, sampleRateHz = RATE_HZ) =>
  encodeWav({ sampleRateHz, channels: [samples] }, "pcm16");

function send(request: Partial<TapsRequest>, samples: Float32Array, sampleRateHz = RATE_HZ) {
  const form = multipart([
    { name: "request", content: JSON.stringify({ build: BUILD, ...request }) },
    { name: "taps", content: wav(samples, sampleRateHz), filename: "taps.wav" },
  ]);
  return service.app.inject({ method: "POST", url: "/api/taps", ...form });
}

describe("POST /api/taps", () => {
  it("answers a build alone with what to tap, in which order and when", async () => {
    const reply = await service.app.inject({ method: "POST", url: "/api/taps", payload: { build: BUILD } });
    expect(reply.statusCode, reply.body).toBe(200);
    const answer = tapsAnswerSchema.parse(reply.json());
    if (answer.kind !== "plan") throw new Error(answer.kind);
    expect(answer.steps.map(({ position, row, at }) => `${at} s: ${position}, ${row}`).slice(0, 3)).toEqual([
      "0 s: position 1, bridge",
      "4 s: position 1, neck",
      "11 s: position 2, neck",
    ]);
    const cautions = answer.cautions.join();
    for (const each of ["phantom power", "Unplug the guitar from the amplifier", "iron", "fumes", "lead", "eye"])
      expect(cautions).toContain(each);
  });

  it("names the pickup that is turned about, and says what sounds where", async () => {
    const reply = await send({ timing: { by: "plan", start: START_SECONDS } }, TAKE);
    expect(reply.statusCode, reply.body).toBe(200);
    const answer = tapsAnswerSchema.parse(reply.json());
    if (answer.kind !== "tapped") throw new Error(answer.kind);
    expect(answer.departures.map(({ kind }) => kind)).toEqual(["reversed"]);
    expect(answer.title).toMatch(/out of phase with the/);
    expect(answer.cells.map(({ expected, sounds }) => expected === sounds)).toEqual(answer.cells.map(() => true));
  });

  it("refuses times that are not one for each step or do not rise, and taps that it cannot tell apart, with the seconds of those found", async () => {
    const times = await send({ timing: { by: "hand", times: [1] } }, TAKE);
    expect(times.statusCode).toBe(400);
    expect(times.json()).toMatchObject({
      errors: [{ path: "timing.times", message: expect.stringMatching(/expected 6/) }],
    });
    const back = await send({ timing: { by: "hand", times: [2, null, 13, 12.5, 13, 20] } }, TAKE);
    expect(back.statusCode).toBe(400);
    expect(back.json().errors).toEqual([
      { path: "timing.times.3", message: "is 12.5 s; expected more than 13 s, as of the steps before it" },
      { path: "timing.times.4", message: expect.stringMatching(/^is 13 s/) },
    ]);
    const pauses = await send({ timing: { by: "pauses" } }, TAKE.subarray(0, 15 * RATE_HZ));
    expect(pauses.statusCode).toBe(422);
    expect(pauses.json()).toMatchObject({ errors: [{ path: "taps", message: expect.stringMatching(/at \d+\.\d s/) }] });
  });

  it("refuses silence, music and the measuring signal by name", async () => {
    const tones = [110, 164.8, 220, 277.2];
    const music = Float32Array.from({ length: 20 * RATE_HZ }, (_, n) => {
      const t = n / RATE_HZ;
      return (
        0.1 * tones.reduce((sum, hz, k) => sum + Math.exp(-2 * ((t + k / 8) % 0.5)) * Math.sin(2 * Math.PI * hz * t), 0)
      );
    });
    const said = async (samples: Float32Array) => {
      const reply = await send({ timing: { by: "plan", start: START_SECONDS } }, samples);
      return [reply.statusCode, reply.json().errors?.[0].path, reply.json().errors?.[0].message];
    };
    const refused = (words: RegExp) => [422, "taps", expect.stringMatching(words)];
    expect(await said(new Float32Array(20 * RATE_HZ))).toEqual(refused(/^is silent/));
    expect(await said(music)).toEqual(refused(/as music or a ringing string does/));
    expect(await said(measuringSignal("sweep", RATE_HZ))).toEqual(refused(/^holds the measuring signal, not taps/));
  });

  it("takes minutes, and says how many at most", async () => {
    const sent = (seconds: number, sampleRateHz: number) =>
      send({}, new Float32Array(seconds * sampleRateHz), sampleRateHz);
    const long = await sent(MAX_TAP_SECONDS + 1, 8_000);
    expect(long.statusCode).toBe(413);
    expect(long.json().errors[0].message).toContain(`at most ${MAX_TAP_SECONDS} s`);
  });
});

describe("POST /api/examine with taps", () => {
  const examine = (request: object, files: readonly string[]) => {
    const content = wav(new Float32Array(RATE_HZ));
    const form = multipart([
      { name: "request", content: JSON.stringify({ build: BUILD, ...request }) },
      ...files.map((name) => ({ name, content, filename: `${name}.wav` })),
    ]);
    return service.app.inject({ method: "POST", url: "/api/examine", ...form });
  };
  const takes = [{ file: "take1" }];
  const rig = { resistor: "47k" };

  it.each([
    ["without takes beside them", { taps: {} }, ["taps"], "taps", /taps alone go to \/api\/taps/],
    ["without their file", { taps: {}, takes, rig }, ["take1"], "taps", /is missing; expected a WAV file/],
    ["that nothing says how to read", { takes, rig }, ["take1", "taps"], "taps", /expected how the file was tapped/],
  ] as const)("refuses taps %s", async (_, request, files, path, message) => {
    const reply = await examine(request, files);
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors).toEqual([{ path, message: expect.stringMatching(message) }]);
  });
});
