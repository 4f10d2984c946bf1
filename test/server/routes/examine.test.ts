import { describe, expect, it } from "vitest";
import { decodeWav } from "../../../src/audio/wav-decode.ts";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { singleFaults } from "../../../src/bench/faults/kinds/single-faults.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { Controls, parseSettings } from "../../../src/build-file/settings.ts";
import { examineAnswerSchema } from "../../../src/contract/examine/examine-answer.ts";
import type { ExamineRequest } from "../../../src/contract/examine/examine-request.ts";
import { thoroughly } from "../../effort.ts";
import { exciterRecording, jackRecording } from "../../examine/guard-recordings.ts";
import { benchOf, seeded, soldered } from "../../examine/simulated-guard.ts";
import { multipart, useService } from "../service.ts";

const RATE_HZ = 48_000;
const service = useService();

const BUILD = {
  presolder: 1,
  plan: {
    layout: "lever-3-two-pickups",
    pickups: { neck: "single-vintage", bridge: "single-medium" },
    volume: "250k",
    tones: [{ pot: "250k", cap: "22n" }],
  },
};
const RIG = { resistor: "47k" } as const;

async function playedSignal(): Promise<Float32Array> {
  const reply = await service.app.inject({ url: `/api/sweep.wav?rate=${RATE_HZ}` });
  return decodeWav(reply.rawPayload).channels[0]!;
}

function ask(request: ExamineRequest, files: Readonly<Record<string, Uint8Array>> = {}) {
  const parts = Object.entries(files).map(([name, content]) => ({ name, content, filename: `${name}.wav` }));
  const form = multipart([{ name: "request", content: JSON.stringify(request) }, ...parts]);
  return service.app.inject({ method: "POST", url: "/api/examine", ...form });
}

async function planOf(build: unknown) {
  const reply = await service.app.inject({ method: "POST", url: "/api/examine", payload: { build } });
  expect(reply.statusCode, reply.body).toBe(200);
  const answer = examineAnswerSchema.parse(reply.json());
  if (answer.kind !== "plan") throw new Error(answer.kind);
  return answer;
}

/** Of the plan, what tells a tone control in one recording: in position 1 at 0. */
const FEW = [5];

/** A guard with these faults, recorded as the plan says, or a part of it; the answer to it. */
async function examined(kind: string | undefined, seed: number, which: readonly number[] | undefined) {
  const build = readBuild(BUILD);
  const random = seeded(seed);
  const truth = singleFaults(build).find((fault) => fault.kind === kind && fault.edits.length > 0);
  const guard = soldered(build, truth?.edits ?? [], random);
  const bench = benchOf(47e3, random);
  const signal = await playedSignal();
  const planned = (await planOf(BUILD)).takes;
  const takes = which ? which.map((index) => planned[index]!) : planned;
  const controls = new Controls(build);
  const files = Object.fromEntries(
    takes.map(({ settings }, index) => {
      const set = parseSettings(controls, settings);
      return [`take${index + 1}`, jackRecording(signal, RATE_HZ, guard, set, bench, random)];
    }),
  );
  const request = {
    build: BUILD,
    rig: RIG,
    takes: takes.map(({ settings }, index) => ({ file: `take${index + 1}`, settings })),
  };
  const reply = await ask(request, files);
  expect(reply.statusCode, reply.body).toBe(200);
  const answer = examineAnswerSchema.parse(reply.json());
  if (answer.kind !== "examined") throw new Error(answer.kind);
  return { answer, truth, files };
}

describe("POST /api/examine", () => {
  it("says which takes to make: every position at 10, then every knob at 0 and 5 where it acts", async () => {
    const { takes, cautions, needs } = await planOf(BUILD);
    expect(takes.map(({ title }) => title)).toEqual([
      "lever in position 1",
      "lever in position 2",
      "lever in position 3",
      "lever in position 1, volume at 0",
      "lever in position 1, volume at 5",
      "lever in position 1, tone at 0",
      "lever in position 1, tone at 5",
    ]);
    expect(cautions.join(" ")).toMatch(/loud/);
    expect(needs.length).toBeGreaterThan(2);
  });

  it("finds a capacitor of another decade in recordings of a guard, and refuses them with their channels swapped", async () => {
    const { answer, truth, files } = await examined("cap-tenth", 4, FEW);
    expect(answer.verdict).toBe("departs");
    const named = [answer.departures[0]!, ...answer.departures[0]!.sameAs].flatMap(({ faults }) => faults);
    expect(named).toContainEqual(expect.objectContaining({ kind: "cap-tenth", lugs: truth!.lugs }));
    expect(answer.summary).toMatch(/^Most likely/);
    const take = { file: "take1", settings: { lever: 1 } };
    const swapped = { build: BUILD, rig: { ...RIG, channels: "behind-before" }, takes: [take] } as const;
    const reply = await ask(swapped, { take1: files.take1! });
    expect(reply.statusCode).toBe(422);
    expect(reply.json().errors[0]).toMatchObject({ path: "take1", message: expect.stringContaining("swapped") });
  });

  for (const kind of [undefined, "outer-lugs-swapped"])
    thoroughly(`calls a guard what it is from recordings of the whole plan: ${kind ?? "sound"}`, {}, async () => {
      const { answer, truth } = await examined(kind, 6, undefined);
      expect(answer.verdict, answer.summary).toBe(truth ? "departs" : "as-drawn");
      expect(answer.takes.some(({ agrees }) => !agrees)).toBe(truth !== undefined);
      const named = [answer.departures[0]!, ...answer.departures[0]!.sameAs].flatMap(({ faults }) => faults);
      expect(named).toContainEqual(expect.objectContaining({ kind: kind ?? "none", lugs: truth?.lugs ?? [] }));
    });

  thoroughly(
    "hears in recordings of a small coil over each pickup that one of them has its leads exchanged",
    async () => {
      const build = readBuild(BUILD);
      const random = seeded(9);
      const truth = singleFaults(build).find(
        ({ kind, lugs }) => kind === "leads-swapped" && lugs.includes("bridge.hot"),
      )!;
      const guard = soldered(build, truth.edits, random);
      const bench = benchOf(47e3, random);
      const signal = await playedSignal();
      const settings = { lever: 2 };
      const set = parseSettings(new Controls(build), settings);
      const exciter = { strength: 0.05, cornerHz: 3000, delaySeconds: 0 };
      const pickups = ["neck", "bridge"];
      const files = Object.fromEntries(
        pickups.map((pickup, index) => [
          `take${index + 1}`,
          exciterRecording(signal, RATE_HZ, guard, set, { pickup, coil: "coil" }, exciter, bench, random),
        ]),
      );
      const takes = pickups.map((pickup, index) => ({ file: `take${index + 1}`, settings, through: { pickup } }));
      const reply = await ask({ build: BUILD, rig: RIG, takes }, files);
      expect(reply.statusCode, reply.body).toBe(200);
      const answer = examineAnswerSchema.parse(reply.json());
      if (answer.kind !== "examined") throw new Error(answer.kind);
      expect(answer.verdict, answer.summary).toBe("departs");
      expect(answer.departures[0]!.faults[0]!.kind).toBe("leads-swapped");
      const named = [answer.departures[0]!, ...answer.departures[0]!.sameAs].flatMap(({ faults }) => faults);
      expect(named).toContainEqual(expect.objectContaining({ kind: "leads-swapped", lugs: truth.lugs }));
      expect(answer.takes.map(({ curves }) => curves.unit)).toEqual(["dB re full scale", "dB re full scale"]);
    },
  );

  it("refuses by the field what no take can be read from", async () => {
    const take = { file: "take1", settings: { lever: 1 } };
    const short = encodeWav(
      { sampleRateHz: RATE_HZ, channels: [new Float32Array(4800), new Float32Array(4800)] },
      "pcm16",
    );
    const slow = encodeWav({ sampleRateHz: 22_050, channels: [new Float32Array(100), new Float32Array(100)] }, "pcm16");
    const mono = encodeWav({ sampleRateHz: RATE_HZ, channels: [new Float32Array(100)] }, "pcm16");
    const cases: [Partial<ExamineRequest>, Record<string, Uint8Array>, string, string][] = [
      [{ rig: RIG, takes: [take] }, {}, "take1", "is missing"],
      [{ takes: [take] }, { take1: short }, "rig", "is missing"],
      [{ rig: RIG, takes: [take] }, { take1: short, take2: short }, "take2", "belongs to no take"],
      [{ rig: RIG, takes: [take, take] }, { take1: short }, "takes.1.file", "is the file of takes.0 too"],
      [
        { rig: RIG, takes: [{ ...take, settings: { lever: 9 } }] },
        { take1: short },
        "takes.0.settings.lever",
        "no position",
      ],
      [
        { rig: RIG, takes: [{ ...take, through: { pickup: "volume" } }] },
        { take1: short },
        "takes.0.through.pickup",
        "no pickup",
      ],
      [{ rig: RIG, takes: [take] }, { take1: slow }, "take1", "sample rate of 22050"],
      [{ rig: RIG, takes: [take] }, { take1: mono }, "take1", "one channel"],
      [{ rig: RIG, takes: [take] }, { take1: short }, "take1", "recording"],
    ];
    for (const [request, files, path, message] of cases) {
      const reply = await ask({ build: BUILD, ...request }, files);
      expect([400, 422], reply.body).toContain(reply.statusCode);
      const [error] = reply.json().errors;
      expect([error.path, error.message]).toEqual([path, expect.stringContaining(message)]);
    }
  });
});
