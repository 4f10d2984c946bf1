import { describe, expect, test } from "vitest";
import { MAX_WISH_CHARS, MAX_WISHES } from "../../../src/limits.ts";
import { useService } from "../service.ts";

const service = useService();

async function post(url: string, payload: object) {
  const reply = await service.app.inject({ method: "POST", url, payload });
  return { status: reply.statusCode, json: reply.json() };
}

const SMALL = {
  starts: ["singles-neck-middle"],
  pickups: { neck: ["single-vintage"], middle: ["single-vintage-rwrp"], bridge: ["single-medium", "single-hot"] },
  values: { volume: ["250k", "500k"], tone: ["250k"], cap: ["22n"], bleed: ["none"] },
  switches: false,
};

describe("POST /api/wishes", () => {
  test("tells what is understood, what is not, and what every word is measured by", async () => {
    const { status, json } = await post("/api/wishes", { text: "glassy and dark 4, fatt bridge" });
    expect(status).toBe(200);
    expect(json.wishes[0]).toMatchObject({
      where: { kind: "position", position: 4 },
      asks: [{ word: "glassy" }, { word: "dark" }],
    });
    expect(json.unknown).toEqual([{ said: "fatt", nearest: "fat" }]);
    expect(json.contradictions[0].words).toEqual(["glassy", "dark"]);
    expect(json.words.find(({ word }: { word: string }) => word === "glassy")).toMatchObject({
      targets: [
        { figure: "peakFrequency", low: 4000, high: 7500 },
        { figure: "peakHeight", low: 4 },
      ],
      source: expect.stringContaining("no source"),
    });
    expect(json.figures.find(({ figure }: { figure: string }) => figure === "hum").unit).toBe("dB");
  });
});

describe("POST /api/wanted", () => {
  test("answers guards as plans, best first, with every target beside what is reached", async () => {
    const { status, json } = await post("/api/wanted", { text: "glassy 4, hum-free 2", ...SMALL });
    expect(status).toBe(200);
    expect(json).toMatchObject({ shapes: { all: 2, tried: 2 }, tradeOffs: [] });
    const [best] = json.guards;
    expect(best).toMatchObject({ met: 2, cost: 0, build: { presolder: 1, plan: { layout: "lever-5-two-tone" } } });
    expect(best.wishes[0]).toMatchObject({ settings: { lever: 4 }, met: true, asks: [{ word: "glassy", met: true }] });
    // The figure that is told is the curve's own.
    const target = best.wishes[0].asks[0].targets[0];
    const { json: curves } = await post("/api/response", { build: best.build, settings: { lever: 4 } });
    expect(target.value).toBeCloseTo(curves.curves[0].peak.frequency, 1);
    expect(best.build.cable).toMatchObject({ length: "3m" });
  });

  test("tries everything where nothing meets the wishes, and tells what each that is missed would cost", async () => {
    const { json } = await post("/api/wanted", { text: "glassy and dark 4, hum-free 2", ...SMALL });
    expect(json).toMatchObject({ exhaustive: true, trials: 4, tradeOffs: [{ wish: 0, met: false }] });
    expect(json.understood.contradictions).toHaveLength(1);
    expect(json.guards[0].values).toHaveLength(3);
  });

  test("takes targets of one's own, a cable and a plan of one's own", async () => {
    const plan = { layout: "one-pickup", pickups: { bridge: "p90" }, volume: "500k", tones: [] };
    const asks = [{ word: "bright", targets: [{ figure: "cutoff", low: 4000 }] }];
    const wishes = [{ where: { kind: "pickups", pickups: ["bridge"] }, asks }];
    const { status, json } = await post("/api/wanted", {
      wishes,
      plan,
      switches: false,
      cable: { length: "1m", capacitance: "100p" },
    });
    expect(status).toBe(200);
    expect(json.guards[0]).toMatchObject({ from: "your plan", met: 1, build: { cable: { length: 1 } } });
    expect(json.guards[0].wishes[0].asks[0].targets).toMatchObject([{ figure: "cutoff", low: 4000, short: 0 }]);
  });

  test.each([
    ["words that nobody knows", { text: "xylophonic 4" }, "text", 'no word that is known ("xylophonic")'],
    [
      "a place that no start has",
      { text: "glassy 4", starts: ["singles-three-way"] },
      "starts",
      "none of them has position 4; they have positions 1 to 3 and the pickups",
    ],
    [
      "a position that no guard has",
      { text: "glassy 99" },
      "text",
      "“99” is no position; expected a position from 1 to 5",
    ],
    [
      "such a position in a wish",
      { wishes: [{ where: { kind: "position", position: 6 }, asks: [{ word: "loud" }] }] },
      "wishes.0.where.position",
      "expected a position from 1 to 5",
    ],
    [
      "a pickup in no place of the guards",
      { text: "glassy 4", ...SMALL, pickups: { tail: ["single-hot"] } },
      "pickups.tail",
      "no guard begun with has a pickup there; expected neck, middle, bridge",
    ],
    ["neither words nor wishes", {}, "wishes", "expected either"],
    ["a start that is none", { text: "glassy 4", starts: ["singles"] }, "starts.0", "is none of"],
    [
      "a range upside down",
      {
        wishes: [
          { where: { kind: "anywhere" }, asks: [{ word: "loud", targets: [{ figure: "loudness", low: 3, high: 1 }] }] },
        ],
      },
      "wishes",
      "",
    ],
    ["a pickup type that is none", { text: "glassy 4", pickups: { neck: ["single"] } }, "pickups.neck.0", ""],
    ["a plan that is none", { text: "glassy 4", plan: { layout: "lever-9" } }, "plan.layout", ""],
    ["too long a text", { text: "a".repeat(MAX_WISH_CHARS + 1) }, "text", String(MAX_WISH_CHARS)],
  ])("refuses %s, naming the field", async (_, body, path, says) => {
    const { status, json } = await post("/api/wanted", body);
    expect(status).toBe(400);
    expect(json.errors[0].path.startsWith(path)).toBe(true);
    expect(json.errors.map(({ message }: { message: string }) => message).join()).toContain(says);
  });

  test("refuses more places than are looked for", async () => {
    const pickups = "neck, middle, bridge, bridge+middle, middle+neck, bridge+neck, bridge+middle+neck".split(", ");
    const places = ["1", "2", "3", "4", "5", ...pickups, "everywhere", "anywhere"];
    const { status, json } = await post("/api/wanted", { text: places.map((place) => `fat ${place}`).join(", ") });
    expect(status).toBe(413);
    expect(json.detail).toContain(String(MAX_WISHES));
  });
});

describe("POST /api/swap-card", () => {
  const plan = { layout: "one-pickup", pickups: { bridge: "p90" }, volume: "500k", tones: [] };
  const build = (title: string) => ({ presolder: 1, title, plan });

  test("answers the card of two guards", async () => {
    const { status, json } = await post("/api/swap-card", {
      out: build("old"),
      in: build("new"),
      guitar: "the blue one",
    });
    expect(status).toBe(200);
    expect(json).toMatchObject({ out: "old", in: "new", guitar: "the blue one", date: null });
    expect(json.player[0]).toMatchObject({ distanceDb: 0, audible: "none" });
  });

  test.each([
    ["a build that is none", { in: { presolder: 1, plan: { layout: "one" } } }, "in.plan.layout"],
    ["a way to let go that is none", { how: { jack: "cut" } }, "how.jack"],
    ["a height of no pickup", { heights: { nekc: { bass: "2mm", treble: "2mm" } } }, "heights.nekc"],
  ])("refuses %s, naming the field", async (_, wrong, path) => {
    const { status, json } = await post("/api/swap-card", { out: build("old"), in: build("new"), ...wrong });
    expect(status).toBe(400);
    expect(json.errors[0].path).toBe(path);
  });

  test.each(["heights", "heightsOut"])("names the pickups that there are where %s name another", async (field) => {
    const wrong = { [field]: { nekc: { bass: "2mm", treble: "2mm" } } };
    const { json } = await post("/api/swap-card", { out: build("old"), in: build("new"), ...wrong });
    expect(json.errors[0].message).toMatch(/^"nekc" is no pickup of .*; expected bridge$/);
  });
});
