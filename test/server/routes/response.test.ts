import { describe, expect, it } from "vitest";
import * as z from "zod";
import { responseAnswerSchema } from "../../../src/contract/response.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";
import { useService } from "../service.ts";

const service = useService();
const build = threeSingles();

async function ask(payload: object) {
  const reply = await service.app.inject({ method: "POST", url: "/api/response", payload: { build, ...payload } });
  expect(reply.statusCode).toBe(200);
  return responseAnswerSchema.extend({ curves: z.array(z.any()) }).parse(reply.json());
}

describe("POST /api/response", () => {
  it("answers the default sweep: five positions × tone 0 to 10, 512 frequencies", async () => {
    const reply = await service.app.inject({ method: "POST", url: "/api/response", payload: { build } });
    const answer = responseAnswerSchema.parse(reply.json());
    expect(answer.curves).toHaveLength(55);
    expect(answer.frequencies).toHaveLength(512);
    expect([answer.frequencies[0], answer.frequencies[511]]).toEqual([20, 20_000]);
    expect(answer.curves[0]).toMatchObject({
      position: 1,
      tone: 0,
      volume: 10,
      setting: "position 1, tone 0, volume 10",
    });
    expect(answer.curves[54]).toMatchObject({ position: 5, tone: 10, settings: { lever: 5, tone1: 10, tone2: 10 } });
    expect(reply.body).not.toMatch(/NaN|Infinity|null,null/);
  });

  it("answers one setting for settings alone", async () => {
    const { curves } = await ask({ settings: { lever: 2, tone1: 3 }, frequencies: [100, "1kHz"] });
    expect(curves).toHaveLength(1);
    expect(curves[0]).toMatchObject({ position: 2, tone: null, setting: "position 2, tone1 3, tone2 10, volume 10" });
    expect(curves[0].magnitude).toHaveLength(2);
    expect(curves[0].sources).toBeUndefined();
  });

  it("varies a sweep's axes over the settings", async () => {
    const { curves } = await ask({
      sweep: { lever: [1, 5], volume: [5, 10] },
      settings: { tone: 2 },
      frequencies: [1000],
    });
    expect(curves.map(({ position, volume, tone }) => [position, volume, tone])).toEqual([
      [1, 5, 2],
      [1, 10, 2],
      [5, 5, 2],
      [5, 10, 2],
    ]);
  });

  it("gives each coil's own transfer on request, whose sum with sign and size is the curve", async () => {
    const { curves } = await ask({
      settings: { lever: 2 },
      frequencies: { from: 100, to: 5000, count: 20 },
      sources: true,
    });
    const { magnitude, sources } = curves[0];
    expect(sources.map(({ pickup }: { pickup: string }) => pickup)).toEqual(["neck", "middle", "bridge"]);
    // The fixture's middle pickup is reversed at 0.95 and its bridge pickup has 1.2.
    const emf = [1, -0.95, 1.2];
    for (let i = 0; i < 20; i++) {
      let re = 0;
      let im = 0;
      for (const [k, source] of sources.entries()) {
        const size = emf[k]! * 10 ** (source.magnitude[i] / 20);
        re += size * Math.cos((source.phase[i] * Math.PI) / 180);
        im += size * Math.sin((source.phase[i] * Math.PI) / 180);
      }
      expect(magnitude[i]).toBeCloseTo(20 * Math.log10(Math.hypot(re, im)), 3);
    }
  });

  it("gives the curve as a string is heard", async () => {
    const plain = await ask({ settings: { lever: 5 }, frequencies: [110] });
    const heard = await ask({ settings: { lever: 5 }, frequencies: [110], string: 5, fret: 0 });
    // The neck coil's usual place is a quarter of the scale; an aperture of 12 mm takes 0.005 dB from the fundamental.
    const comb = 20 * Math.log10(Math.sin(Math.PI * 0.25));
    expect(heard.curves[0].magnitude[0] - plain.curves[0].magnitude[0]).toBeCloseTo(comb, 1);
  });

  it("answers a sweep long enough for a worker like one that is not", async () => {
    const settings = { lever: 3, tone: 4 };
    const short = await ask({ settings, frequencies: [440] });
    const long = await ask({
      sweep: { volume: Array.from({ length: 300 }, (_, i) => i / 30) },
      settings,
      frequencies: { from: 440, to: 880, count: 100 },
    });
    expect(long.curves).toHaveLength(300);
    const last = await ask({ settings: { ...settings, volume: 299 / 30 }, frequencies: [440] });
    expect(long.curves[299].magnitude[0]).toBe(last.curves[0].magnitude[0]);
    expect(long.curves[299].magnitude[0]).toBeLessThan(short.curves[0].magnitude[0]);
  });

  it("takes a guard without a switch", async () => {
    const reply = await service.app.inject({ method: "POST", url: "/api/response", payload: { build: onePickup() } });
    const { curves } = responseAnswerSchema.parse(reply.json());
    expect(curves).toHaveLength(11);
    expect(curves[0]).toMatchObject({ position: null, setting: "tone 0, volume 10" });
  });
});
