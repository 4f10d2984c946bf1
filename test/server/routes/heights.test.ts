import { describe, expect, it } from "vitest";
import { encodeWav } from "../../../src/audio/wav-encode.ts";
import { type HeightsRequest, heightsAnswerSchema } from "../../../src/contract/bench/heights.ts";
import { stringLevelsAnswerSchema } from "../../../src/contract/bench/string-levels.ts";
import { recordTake } from "../../audio/string-levels/take.ts";
import { PLAN } from "../plan.ts";
import { useService, withFile } from "../service.ts";

const service = useService();
const post = (payload: object) => service.app.inject({ method: "POST", url: "/api/heights", payload });

const at = (bass: string, treble: string) => ({
  bass: { gap: bass, pitch: "0.8mm" },
  treble: { gap: treble, pitch: "0.8mm" },
});
const level = (db: number) => [0, 0.2, -0.3, 0.1, -0.1, 0.1].map((off) => db + off);
const ASKED: HeightsRequest = {
  build: PLAN,
  pickups: { neck: at("2.4mm", "2.4mm"), bridge: at("2.4mm", "2.4mm") },
  heights: { low: { neck: { bass: "3.6mm", treble: "3.6mm" }, bridge: { bass: "3.6mm", treble: "3.6mm" } } },
  levels: [
    { settings: { lever: 1 }, strings: level(-20) },
    { settings: { lever: 5 }, strings: level(-17) },
    { heights: "low", settings: { lever: 1 }, strings: level(-26) },
    { heights: "low", settings: { lever: 5 }, strings: level(-23) },
  ],
  target: { reference: { lever: 1 }, matter: "positions" },
};

describe("POST /api/heights", () => {
  it("fits the law to levels at two heights and tells the turns that bring the neck to the bridge's level", async () => {
    const reply = await post(ASKED);
    expect(reply.statusCode).toBe(200);
    const { basis, pickups, positions, balanced, habits } = heightsAnswerSchema.parse(reply.json());
    expect([basis, balanced, habits]).toEqual(["recordings", { positions: true, strings: true }, null]);
    // 6 dB from 2.4 to 3.6 mm is an exponent of 6 / (20·log10 1.5); 3 dB are half of that in the logarithm.
    const exponent = 6 / (20 * Math.log10(1.5));
    expect(pickups.map(({ law }) => law.exponent)).toEqual([expect.closeTo(exponent, 6), expect.closeTo(exponent, 6)]);
    const wanted = (2.4 * Math.sqrt(1.5) - 2.4) / 0.8;
    const [bass, treble] = pickups[0]!.screws;
    for (const { turns } of [bass!, treble!]) expect(Math.abs(turns! - wanted)).toBeLessThan(1 / 8);
    // Two screws an eighth apart set the middle to a sixteenth.
    expect(Math.abs((bass!.turns! + treble!.turns!) / 2 - wanted)).toBeLessThanOrEqual(1 / 32);
    expect(bass!.text).toMatch(
      /^Bass screw: (five eighths of a turn|three quarters of a turn) down, counter-clockwise\.$/,
    );
    expect(pickups[1]!.screws.map(({ direction }) => direction)).toEqual(["stays", "stays"]);
    expect(positions.map(({ label, off }) => [label, Math.round(off)])).toEqual([
      ["position 1", 0],
      ["position 5", 3],
    ]);
  });

  it("tells the build's own levels and what to record where nothing was recorded", async () => {
    const { basis, pickups, positions, next } = (await post({ build: PLAN })).json();
    expect([basis, pickups, positions.length]).toEqual(["model", [], 5]);
    expect(next.join(" ")).toMatch(/two heights/);
  });

  it("tells what changes for the player beside the guard that is in", async () => {
    const from = { ...PLAN, plan: { ...PLAN.plan, pickups: { ...PLAN.plan.pickups, bridge: "single-vintage" } } };
    const { habits } = heightsAnswerSchema.parse((await post({ build: PLAN, from })).json());
    expect(habits!.heights[0]).toMatch(/^The bridge humbucker sits where the bridge single coil sat/);
    expect(habits!.volume).toHaveLength(5);
    expect(habits!.volume[0]!.text).toMatch(
      /^Position 1 will be \d\.\d dB louder: where the volume stood at 10 it stands at \d\.\d\.$/,
    );
  });

  const refusals: readonly [string, object, number, string, RegExp][] = [
    ["a pickup that is none", { pickups: { nek: at("2mm", "2mm") } }, 400, "pickups.nek", /did you mean "neck"/],
    ["a gap of nothing", { pickups: { neck: at("0mm", "2mm") } }, 400, "pickups.neck.bass.gap", /expected more than 0/],
    [
      "limits the wrong way round",
      { pickups: { neck: { ...at("2mm", "2mm"), limits: { min: "3mm", max: "2mm" } } } },
      400,
      "pickups.neck.limits.max",
      /not under/,
    ],
    [
      "a height set without a name",
      { ...ASKED, levels: [{ ...ASKED.levels![2], heights: "lo" }] },
      400,
      "levels.0.heights",
      /did you mean "low"/,
    ],
    [
      "five strings",
      { ...ASKED, levels: [{ ...ASKED.levels![0], strings: [0, 0, 0, 0, 0] }] },
      400,
      "levels.0.strings",
      /has 5 levels; expected 6/,
    ],
    [
      "a setting without sound",
      { ...ASKED, levels: [{ settings: { lever: 9 }, strings: level(0) }] },
      400,
      "levels.0.settings.lever",
      /position/,
    ],
    [
      "a pickup that stood still",
      { ...ASKED, heights: { low: { bridge: { bass: "3.6mm", treble: "3.6mm" } } } },
      422,
      "pickups.neck",
      /one height.*expected two/,
    ],
    ["a build that is none", { build: {} }, 400, "build", /./],
    ["an old guard that is none", { from: {} }, 400, "from", /./],
  ];
  it.each(refusals)("refuses %s by its path", async (_, changes, status, path, message) => {
    const reply = await post({ build: PLAN, ...changes });
    const { errors } = reply.json();
    expect(reply.statusCode).toBe(status);
    expect(errors[0].path).toMatch(new RegExp(`^${path.replaceAll(".", "\\.")}`));
    expect(errors[0].message).toMatch(message);
  });
});

describe("POST /api/string-levels", () => {
  const send = (file: Uint8Array, request: object = {}) =>
    service.app.inject({ method: "POST", url: "/api/string-levels", ...withFile(request, file) });

  it("measures the open strings of a WAV file, in the players' order", async () => {
    const reply = await send(encodeWav(recordTake(), "pcm24"));
    expect(reply.statusCode).toBe(200);
    const { strings, noise } = stringLevelsAnswerSchema.parse(reply.json());
    expect(strings.map(({ string, plucks }) => [string, plucks.length])).toEqual([1, 2, 3, 4, 5, 6].map((n) => [n, 1]));
    for (const { level } of strings) expect(level).toBeGreaterThan(noise + 15);
  });

  it("refuses what it cannot measure under signal, with what to do", async () => {
    const reply = await send(encodeWav(recordTake({ strings: [6, 5, 4] }), "pcm16"));
    expect([reply.statusCode, reply.json().errors[0].path]).toEqual([422, "signal"]);
    expect(reply.json().detail).toMatch(/^3 plucks were found .*damp each string/);
  });

  it("refuses a request without a file, and one that is no WAV", async () => {
    const bare = await service.app.inject({ method: "POST", url: "/api/string-levels", payload: {} });
    expect([bare.statusCode, bare.json().errors[0].path]).toEqual([400, "signal"]);
    const text = await send(new TextEncoder().encode("six strings"));
    expect([text.statusCode, text.json().errors[0].path]).toEqual([400, "signal"]);
  });
});
