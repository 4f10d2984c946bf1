import { describe, expect, it } from "vitest";
import { benchAnswerSchema } from "../../../src/contract/bench/bench.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";
import { useService } from "../service.ts";

const service = useService();
const post = (url: string, payload: object) => service.app.inject({ method: "POST", url, payload });
const between = ["jack.tip", "jack.sleeve"];
const pocket = { kind: "manual-2000", leads: "0.4" };

describe("a request's meter", () => {
  it("shows in the readings of the bench what stands on it, and says what it does to a coil", async () => {
    const answer = benchAnswerSchema.parse((await post("/api/bench", { build: onePickup(), meter: pocket })).json());
    const [jack] = answer.readings;
    expect(jack!.meter).toMatchObject({ range: 20_000, text: "5.86 on the 20 kΩ range" });
    expect(answer.meter!.words).toMatch(/2000 counts/);
    expect(answer.meter!.notes.join(" ")).toContain("0.4 Ω is taken for the leads");
    const without = benchAnswerSchema.parse((await post("/api/bench", { build: onePickup() })).json());
    expect(without.meter).toBeUndefined();
    expect(without.readings[0]).not.toHaveProperty("meter");
  });

  it("refuses a range that it does not have, by its field", async () => {
    const reply = await post("/api/bench", { build: onePickup(), meter: { kind: "manual-2000", range: "30k" } });
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors).toEqual([
      { path: "meter.range", message: "is 30000 ohms; expected one of 200, 2000, 20000, 200000, 2000000, 20000000" },
    ]);
  });

  it("is over its range in whatever way it says so, the same in a reading as `above`", async () => {
    const build = threeSingles();
    const readings = (ohms: object) => [
      { between, settings: { lever: 1 }, ohms: 6620 },
      { between, settings: { lever: 5 }, ...ohms },
    ];
    const told = async (ohms: object, meter?: object) => {
      const { summary, explanations } = (
        await post("/api/diagnose", { build, readings: readings(ohms), ...(meter ? { meter } : {}) })
      ).json();
      return { summary, first: explanations[0].faults };
    };
    const above = await told({ above: "20k" });
    expect(above.summary).toContain("above 20 kΩ");
    for (const ohms of ["OL", "ol", "0L", "1 .", "1   ", "----", "over range"])
      expect(await told({ ohms, range: "20k" }), ohms).toEqual(above);
    // Without a range a display that is over it has found none: the circuit is open.
    expect(await told({ ohms: "OL" })).toEqual(await told({ ohms: null }));
    // Who sets ranges and says none stood on the one for a sound guard, 20 kΩ.
    expect((await told({ ohms: "1 ." }, { kind: "manual-2000" })).summary).toContain("above 20 kΩ");
    // So coarse a range has no 1 Ω.
    expect((await told({ ohms: 1, range: "20k" }, { kind: "manual-2000" })).summary).toContain("above 20 kΩ");
    expect((await told({ ohms: null }, { kind: "manual-2000-to-2M" })).summary).toContain("above 2 MΩ");
  });

  it("has its leads taken off what it showed: an ohm and a half of them is no fault of a ground", async () => {
    const readings = [
      { between: ["volume.case", "jack.sleeve"], ohms: 4.2 },
      { between, ohms: 5863 },
    ];
    const first = async (meter: object) =>
      (await post("/api/diagnose", { build: onePickup(), readings, meter })).json().explanations[0].faults[0].kind;
    expect(await first({ kind: "auto-6000", leads: 4 })).toBe("none");
    expect(await first({ kind: "auto-6000", leads: 4, zeroed: true })).not.toBe("none");
  });

  it("sets the range for the next reading, and says how it shows there what is open", async () => {
    const readings = [{ between, settings: { lever: 5 }, ohms: 250e3 }];
    const body = { build: threeSingles(), readings };
    const next = async (meter?: object) =>
      (await post("/api/diagnose", { ...body, ...(meter ? { meter } : {}) })).json().nextMeasurement.instruction;
    expect(await next()).not.toMatch(/range/);
    expect(await next(pocket)).toMatch(/ Set the .* range(; what is open shows 1 there)?\.$/);
  });

  it("judges what the passport notes by what it may show", async () => {
    const passport = async (noted: string, meter?: object) => {
      const body = { build: onePickup(), noted: { jack: noted }, ...(meter ? { meter } : {}) };
      return (await post("/api/passport", body)).json().readings[0];
    };
    expect(await passport("5.86k")).toMatchObject({ fits: true, shows: null });
    expect(await passport("5.86k", pocket)).toMatchObject({ fits: true, shows: "5.86 on the 20 kΩ range" });
    expect(await passport("1 .", pocket)).toMatchObject({ fits: false });
  });

  it("refuses probes of more ohms than any have, by the value and the bound", async () => {
    const reply = await post("/api/bench", { build: onePickup(), meter: { kind: "bench", leads: "1k" } });
    expect(reply.statusCode).toBe(400);
    expect(reply.json().errors).toEqual([{ path: "meter.leads", message: '"1k" is 1000 ohms; expected at most 10' }]);
  });

  it("finds an unknown pickup's leads with a needle, and names the scale to read on", async () => {
    const body = { leads: ["a", "b", "c"], readings: [{ between: ["a", "b"], ohms: "6k" }], meter: "needle" };
    const reply = await post("/api/leads", body);
    expect(reply.statusCode).toBe(200);
    const { next, labellings } = reply.json();
    expect(JSON.stringify(next)).not.toContain("20 kΩ range");
    // One reading to some 12 % of a scale's middle; the usual meter's is one per cent.
    const errors = labellings.flatMap(({ coils }: { coils: { resistanceError: number | null }[] }) =>
      coils.map(({ resistanceError }) => resistanceError ?? 0),
    );
    expect(Math.max(...errors)).toBeGreaterThan(0.05);
  });
});

describe("copper's temperature", () => {
  it("corrects a coil solved from a reading: 10 °C takes 3.9 % off (IEC 60028)", async () => {
    const solve = { coil: { reading: "5.629k", pot: "250k" } };
    const { solved } = (await post("/api/bench", { build: onePickup(), temperature: 10, solve })).json();
    expect(solved.coil.at20 / solved.coil.ohms).toBeCloseTo(1 / (1 - 0.0393), 9);
  });

  it("is in what a reading must be, and a guard read in the cold is sound", async () => {
    const cold = (await post("/api/bench", { build: onePickup(), temperature: 10 })).json();
    // 6 kΩ less 3.93 %, beside 250 kΩ.
    const coil = 6000 * (1 - 0.0393);
    expect(cold.temperature).toBe(10);
    expect(cold.readings[0].ohms).toBeCloseTo((coil * 250e3) / (coil + 250e3), 6);
  });
});
