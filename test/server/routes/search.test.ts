import { describe, expect, it } from "vitest";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";
import { useService } from "../service.ts";

const service = useService();

async function search(payload: object) {
  const reply = await service.app.inject({ method: "POST", url: "/api/search", payload });
  return { status: reply.statusCode, json: reply.json() };
}

const hidden = onePickup({ parts: { cap: { kind: "cap", capacitance: "6.8n" } } });

describe("POST /api/search", () => {
  it("finds a hidden cap from the series, and lists ten with what each costs elsewhere", async () => {
    const { status, json } = await search({
      build: onePickup(),
      free: [{ part: "cap" }],
      wish: { kind: "like", build: hidden, like: { tone: 0 }, settings: { tone: 0 } },
    });
    expect(status).toBe(200);
    expect(json).toMatchObject({ combinations: 13, tried: 13, exhaustive: true });
    expect(json.best).toHaveLength(10);
    expect(json.best[0].values).toEqual([{ name: "cap", unit: "farads", value: 6.8e-9 }]);
    expect(json.best[0].elsewhere.length).toBeGreaterThan(2);
    expect(json.best[0].elsewhere[0].verdict).toMatch(/differ by/);
  });

  it("takes what is in the drawer, as people write it", async () => {
    const { json } = await search({
      build: onePickup(),
      free: [{ part: "cap", values: ["223", "6n8", "0.047uF"] }],
      wish: { kind: "like", build: hidden, like: { tone: 0 }, settings: { tone: 0 } },
    });
    expect(json.best.map((found: { values: { value: number }[] }) => found.values[0]!.value)).toEqual([
      6.8e-9, 22e-9, 47e-9,
    ]);
  });

  it.each([
    ["a bleed for a volume", [{ bleed: "volume", style: "series" }], { kind: "keeps-treble" }],
    ["a taper", [{ taper: "tone1" }], { kind: "tone-halfway", settings: { lever: 5 } }],
    ["a cable and a pot", [{ cable: true }, { part: "volume" }], { kind: "peak", frequency: "4kHz" }],
    [
      "a load resistor",
      [{ add: "resistor", between: ["bridge.hot", "bridge.ground"], orNone: true }],
      { kind: "as-bright", settings: { lever: 1 }, as: [{ lever: 3 }, { lever: 5 }] },
    ],
    [
      "a resistor in a wire",
      [{ inWire: ["volume.2", "jack.tip"], series: "E6", from: "1k", to: "100k" }],
      { kind: "peak", frequency: 3000 },
    ],
  ])("chooses %s", async (_name, free, wish) => {
    const { status, json } = await search({ build: threeSingles(), free, wish });
    expect(status).toBe(200);
    expect(json.best.length).toBeGreaterThan(0);
    const costs = json.best.map((found: { cost: number }) => found.cost);
    expect(costs).toEqual([...costs].sort((a, b) => a - b));
  });

  it.each([
    ["a part that is not there", [{ part: "cup" }], {}, "free.0.part"],
    ["half a series", [{ part: "cap", series: "E12" }], {}, "free.0"],
    ["an unreadable value", [{ part: "cap", values: ["22q"] }], {}, "free.0.values.0"],
    ["a value of nothing", [{ part: "cap", values: [0] }], {}, "free.0.values.0"],
    ["an empty span", [{ part: "cap", series: "E6", from: "16n", to: "20n" }], {}, "free.0"],
    ["a fraction beyond the track", [{ taper: "tone", values: [1.5] }], {}, "free.0.values.0"],
    ["an unknown control", [{ part: "cap" }], { settings: { tune: 3 } }, "wish.settings.tune"],
    ["an unknown wish", [{ part: "cap" }], { kind: "louder" }, "wish.kind"],
    ["nothing free", [], {}, "free"],
  ])("refuses %s, naming the field", async (_name, free, changed, path) => {
    const { status, json } = await search({
      build: onePickup(),
      free,
      wish: { kind: "peak", frequency: 3000, ...changed },
    });
    expect(status).toBe(400);
    expect(json.errors.map((fault: { path: string }) => fault.path)).toContain(path);
  });

  it("says what a wish needs that the build has not", async () => {
    const build = {
      ...onePickup(),
      parts: { ...(onePickup() as { parts: object }).parts, tone: { kind: "pot", resistance: "250k" } },
    };
    const { json } = await search({ build, free: [{ part: "cap" }], wish: { kind: "tone-halfway" } });
    expect(json.detail).toMatch(/no pot with the role "tone"/);
  });
});
