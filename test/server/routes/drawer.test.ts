import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { pickupPart } from "../../choice/buildable/heaps.ts";
import { useService } from "../service.ts";

const service = useService();

async function post(url: string, payload: object) {
  const reply = await service.app.inject({ method: "POST", url, payload });
  return { status: reply.statusCode, json: reply.json() };
}

const DRAWER = {
  items: [
    { part: pickupPart("p90") },
    { part: pickupPart("single-vintage") },
    { part: { kind: "pot", resistance: "500k", taper: "audio" } },
    { part: { kind: "pot", resistance: "250k", taper: "audio" } },
    { part: { kind: "cap", capacitance: "22n" }, measured: ["21.3n"] },
    { part: { kind: "resistor", resistance: "1M" } },
  ],
};

describe("POST /api/buildable", () => {
  it("finds every guard of a small drawer, with what stays over and what one part more would open", async () => {
    const { status, json } = await post("/api/buildable", {
      drawer: DRAWER,
      layouts: ["one-pickup", "toggle-3-one-volume"],
    });
    expect(status).toBe(200);
    // Either pickup; either pot alone, or one as volume and the other as tone with the cap.
    expect(json).toMatchObject({ wirings: { count: 2, isAll: true }, guards: { count: 8, isAll: true }, heard: 8 });
    expect(json).toMatchObject({ isExhaustive: true, method: "all 8 guards were heard" });
    for (const left of [
      "tones after the volume",
      "volumes that leave",
      "resistors beside",
      "more than three",
      "set otherwise",
    ])
      expect(json.basis).toContain(left);
    const [best] = json.best;
    expect(best.score.sounds).toBe(2);
    expect(best.staysOver.map(({ what }: { what: string }) => what)).toContain("resistor 1 MΩ ±5 %");
    expect(readBuild({ presolder: 1, plan: best.plan }).parts.cap).toMatchObject({
      capacitance: expect.closeTo(21.3e-9, 15),
    });
    const opened = json.purchases.map(({ what, opens }: { what: string; opens: number }) => [what, opens]);
    expect(opened[0][1]).toBeGreaterThanOrEqual(opened.at(-1)[1]);
    expect(opened.map(([what]: [string]) => what).join()).toMatch(/toggle|lever/);
  });

  it("leaves out what a soldered guard holds", async () => {
    const soldered = { presolder: 1, plan: { layout: "one-pickup", pickups: { bridge: "p90" }, volume: "500k" } };
    const { json } = await post("/api/buildable", { drawer: DRAWER, soldered: [soldered] });
    expect(json.guards).toEqual({ count: 1, isAll: true });
    expect(json.best[0].says[1]).toBe("Bridge: single coil, vintage wind");
  });

  it("takes the very pots that it says, and leaves the one that was not measured", async () => {
    const pot = { part: { kind: "pot", resistance: "250k", taper: "audio" }, count: 3, measured: ["238k", "251k"] };
    const items = [{ part: pickupPart("p90") }, pot, { part: { kind: "cap", capacitance: "22n" } }];
    const { json } = await post("/api/buildable", { drawer: { items }, layouts: ["one-pickup"] });
    const used = ({ plan }: { plan: { volume: { measured?: number }; tones: { measured?: number }[] } }) =>
      [plan.volume, ...plan.tones].flatMap(({ measured }) => measured ?? []);
    for (const found of json.best) {
      const left = found.staysOver.flatMap(({ measured }: { measured?: number }) => measured ?? []);
      expect([...used(found), ...left].sort()).toEqual([238e3, 251e3]);
    }
  });

  it("finds none in an empty drawer", async () => {
    const { json } = await post("/api/buildable", { drawer: {} });
    expect(json).toMatchObject({ guards: { count: 0, isAll: true }, best: [], purchases: [] });
  });

  it.each([
    [{ drawer: { items: [{ part: { kind: "cap", capacitance: "22 H" } }] } }, "drawer.items.0.part.capacitance"],
    [{ drawer: {}, layouts: ["lever-7"] }, "layouts.0"],
    [{ drawer: {}, soldered: [{ presolder: 1 }] }, "soldered.0.parts"],
  ])("refuses %o by name", async (body, path) => {
    const { status, json } = await post("/api/buildable", body);
    expect(status).toBe(400);
    expect(json.errors.map((error: { path: string }) => error.path)).toContain(path);
  });
});

describe("POST /api/heard-change", () => {
  it("tells pots of one value apart by what each measured", async () => {
    const one = { layout: "one-pickup", pickups: { bridge: "p90" }, volume: "500k" };
    const pot = { part: { kind: "pot", resistance: "250k", taper: "audio" }, count: 3, measured: ["221k", "272k"] };
    const { json } = await post("/api/heard-change", { build: { presolder: 1, plan: one }, drawer: { items: [pot] } });
    const heard = json.heard.map(({ to }: { to: { measured?: number } }) => to.measured);
    expect(heard).toHaveLength(3);
    expect(new Set(heard)).toEqual(new Set([221e3, 272e3, undefined]));
  });

  const build = {
    presolder: 1,
    plan: { layout: "one-pickup", pickups: { bridge: "p90" }, volume: "500k", tones: [{ pot: "250k", cap: "22n" }] },
  };

  it("names the part, what it costs and what is heard, and gives the guard with it", async () => {
    const drawer = { items: [{ part: { kind: "cap", capacitance: "4.7n" }, price: 2.5 }] };
    const { status, json } = await post("/api/heard-change", { build, drawer: { ...drawer, currency: "coins" } });
    expect(status).toBe(200);
    expect(json.heard).toHaveLength(1);
    expect(json.heard[0]).toMatchObject({ name: "cap", cost: 0, source: { item: 0 }, to: { code: "472K" } });
    expect(json.heard[0].verdict).toMatch(/differ by/);
    expect(readBuild(json.heard[0].build).parts.cap).toMatchObject({ capacitance: 4.7e-9 });
  });
});
