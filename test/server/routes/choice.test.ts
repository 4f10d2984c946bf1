import { describe, expect, it } from "vitest";
import { coilImpedance } from "../../../src/choice/fit/coil-model.ts";
import { loadedRatio } from "../../../src/choice/fit/loaded-ratio.ts";
import { createNormal } from "../../choice/fit/known-coils.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";
import { useService } from "../service.ts";

const service = useService();

async function post(url: string, payload: object) {
  const reply = await service.app.inject({ method: "POST", url, payload });
  return { status: reply.statusCode, text: reply.body, headers: reply.headers, json: () => reply.json() };
}

const other = onePickup({ parts: { cap: { kind: "cap", capacitance: "47n" } } });

describe("POST /api/compare", () => {
  it("compares two caps over a sweep on an actual phrase, with the tolerance beside it", async () => {
    const request = {
      builds: [onePickup(), other],
      sweep: { tone: [0, 10] },
      signal: "strum",
      tolerance: { draws: 2000 },
    };
    const reply = await post("/api/compare", request);
    expect(reply.status).toBe(200);
    const { weighting, bands, rows, verdict, basis } = reply.json();
    expect(weighting).toBe("strum");
    expect(rows.map((row: { audible: string }) => row.audible)).toEqual(["another-sound", "none"]);
    expect(rows[0].difference).toHaveLength(bands.length);
    expect(rows[0].tolerance.exceeded).toBe(true);
    expect(rows[1].tolerance.exceeded).toBe(false);
    expect(verdict).toMatch(/; with the tone at 10 nobody hears it\. /);
    expect(basis).toMatch(/1977/);
  });

  it("compares two settings of one build", async () => {
    const settings = [{ tone: 10 }, { tone: 0 }];
    const reply = await post("/api/compare", { builds: [onePickup()], settings, tolerance: false });
    expect(reply.json().rows[0].label).toBe("tone 10, volume 10 / tone 0, volume 10");
    expect(reply.json().rows[0].tolerance).toBeNull();
  });

  it("compares the whole default sweep of a five-position guard and leaves nothing out", async () => {
    const brighter = threeSingles({
      parts: { volume: { kind: "pot", role: "volume", resistance: "500k", taper: "audio" } },
    });
    const { rows } = (await post("/api/compare", { builds: [threeSingles(), brighter] })).json();
    expect(rows).toHaveLength(55);
    for (const row of rows) {
      expect(row.tolerance.high).toBeGreaterThanOrEqual(row.tolerance.median);
      expect(Number.isFinite(row.largest.difference)).toBe(true);
    }
  });

  it.each([
    ["one build in one setting", { builds: [onePickup()] }, "builds"],
    ["builds with different sweeps", { builds: [onePickup(), threeSingles()] }, "sweep"],
    ["an unknown signal", { builds: [onePickup(), other], signal: "strm" }, "signal"],
    ["a second build at fault", { builds: [onePickup(), { presolder: 1 }] }, "builds.1.parts"],
    ["too few draws", { builds: [onePickup(), other], tolerance: { draws: 10 } }, "tolerance.draws"],
  ])("refuses %s, naming the field", async (_name, request, path) => {
    const reply = await post("/api/compare", request);
    expect(reply.status).toBe(400);
    expect(reply.json().errors.map((fault: { path: string }) => fault.path)).toContain(path);
  });

  it("refuses more drawn guards than it has time for", async () => {
    const request = { builds: [threeSingles(), threeSingles()], tolerance: { draws: 20_000 } };
    const reply = await post("/api/compare", request);
    expect([reply.status, reply.json().errors[0].path]).toEqual([413, "tolerance"]);
  });
});

describe("POST /api/tolerance", () => {
  it("gives the same bands for the same seed, in order, and says which tolerances are customary", async () => {
    const request = { build: onePickup(), seed: 5, points: 32 };
    const [first, second] = await Promise.all([post("/api/tolerance", request), post("/api/tolerance", request)]);
    expect(first.text).toBe(second.text);
    const { low, middle, high, peak, cutoff, spread, draws } = first.json();
    expect(draws).toBe(2000);
    for (const [i, value] of middle.entries()) {
      expect(low[i]).toBeLessThanOrEqual(value);
      expect(high[i]).toBeGreaterThanOrEqual(value);
    }
    expect(peak.frequency.low).toBeLessThan(peak.frequency.high);
    expect(cutoff.low).toBeLessThan(cutoff.high);
    expect(spread).toContainEqual({
      part: "volume",
      field: "resistance",
      nominal: 250_000,
      tolerance: 0.2,
      isDefault: true,
    });
  });
});

describe("POST /api/table", () => {
  it("gives every setting's figures as JSON", async () => {
    const { rows } = (await post("/api/table", { build: threeSingles() })).json();
    expect(rows).toHaveLength(55);
    for (const row of rows) expect(row.loudness).toBeLessThanOrEqual(0);
    // The middle coil is wound the other way: positions 2 and 4 take up less hum than either coil alone.
    const humAt = (position: number) => rows.find((row: { position: number }) => row.position === position).hum;
    expect(humAt(2)).toBeLessThan(humAt(1) - 6);
    expect(humAt(4)).toBeLessThan(humAt(5) - 6);
  });

  it("gives the same as CSV with a line a setting", async () => {
    const build = threeSingles() as { parts: Record<string, unknown> };
    const reply = await post("/api/table", { build, format: "csv", sweep: { lever: [1, 2, 3] } });
    expect(reply.headers["content-type"]).toBe("text/csv; charset=utf-8");
    const lines = reply.text.trimEnd().split("\r\n");
    expect(lines).toHaveLength(4);
    expect(lines[0]).toContain("loudness (LU)");
  });
});

describe("POST /api/fit", () => {
  const coil = { resistance: 6000, inductance: 2.4, capacitance: 110e-12, loss: 1.2e6 };
  const lines = Array.from({ length: 60 }, (_, i) => {
    const hertz = 20 * 1000 ** (i / 59);
    const { re, im } = coilImpedance(coil, hertz);
    return [hertz.toFixed(3), Math.hypot(re, im).toFixed(2), ((Math.atan2(im, re) * 180) / Math.PI).toFixed(3)];
  });

  it.each([
    [",", "Hz,ohms,degrees"],
    [";", "frequency;impedance;phase"],
    ["\t", "# measured on the bench"],
  ])("reads a table separated by %j and drops the values into a build", async (separator, heading) => {
    const table = [heading, ...lines.map((line) => line.join(separator))].join("\n");
    const reply = await post("/api/fit", { method: "impedance", table });
    expect(reply.status).toBe(200);
    const { coil: fitted, lossModel, residuals } = reply.json();
    expect(lossModel).toBe("resistor");
    expect(residuals).toHaveLength(120);
    for (const key of ["resistance", "inductance", "capacitance", "loss"] as const)
      expect(fitted[key] / coil[key]).toBeCloseTo(1, 2);
    const build = onePickup({ pickup: { kind: "pickup", coils: { coil: fitted } } });
    expect((await post("/api/response", { build, settings: {} })).status).toBe(200);
  });

  it("fits resonances with known capacitors", async () => {
    const readings = [
      { capacitance: 0, frequency: "9795Hz" },
      { capacitance: "470p", frequency: 4266 },
      { capacitance: "1n", frequency: 3083 },
    ];
    const { values } = (await post("/api/fit", { method: "resonances", resistance: "6k", readings })).json();
    expect(values[1].low).toBeLessThan(2.4);
    expect(values[1].high).toBeGreaterThan(2.4);
    expect(values[2].low).toBeLessThan(110e-12);
    expect(values[2].high).toBeGreaterThan(110e-12);
  });

  it("fits resonances by what stands in the coil, and by all kinds where nobody says", async () => {
    const readings = [
      { capacitance: 0, frequency: 6400 },
      { capacitance: "470p", frequency: 2950 },
      { capacitance: "1n", frequency: 2190 },
    ];
    const request = { method: "resonances", resistance: "10k", readings, across: { resistance: "1M" } };
    const [typed, untyped] = [
      (await post("/api/fit", { ...request, type: "humbucker" })).json(),
      (await post("/api/fit", request)).json(),
    ];
    expect([typed.lossModel, untyped.lossModel]).toEqual(["section-and-resistor", "none"]);
    expect(typed.lowFrequencyInductance.value).toBeGreaterThan(1.05 * untyped.lowFrequencyInductance.value);
    expect(untyped.lowFrequencyInductance.high).toBeGreaterThanOrEqual(typed.lowFrequencyInductance.high);
    expect(untyped.notes.join(" ")).toContain("Say what kind of pickup");
    const wrong = (await post("/api/fit", { ...request, type: "banjo" })).json();
    expect(wrong.errors[0].path).toBe("type");
  });

  const ratios = (load: { resistance?: number; capacitance?: number }) =>
    lines.map(([hertz]) => {
      const { resistance = Number.POSITIVE_INFINITY, capacitance = 0 } = load;
      const { re, im } = loadedRatio(
        coil,
        Number(hertz),
        { resistance, capacitance },
        { resistance: 1e6, capacitance: 0 },
      );
      const level = (20 * Math.log10(Math.hypot(re, im)) - 0.2).toFixed(5);
      return `${hertz}; ${level}; ${((Math.atan2(im, re) * 180) / Math.PI).toFixed(4)}`;
    });

  it("fits a table in any order of its lines as it does the rising one", async () => {
    const load = { resistance: 200e3, capacitance: 470e-12 };
    // Errors that follow one another, as a real instrument's do.
    const drifting = ratios(load).map((line, at) =>
      line.replace(/; (.*);/, (_, db) => `; ${+db + 0.3 * Math.sin(at / 5)};`),
    );
    const fitted = async (table: readonly string[]) => {
      const known = { resistance: coil.resistance, across: { resistance: "1M" }, loss: "resistor" };
      const reply = await post("/api/fit", { method: "two-loads", table: table.join("\n"), load, ...known });
      expect(reply.status).toBe(200);
      return reply.json();
    };
    const mixed = drifting.map((_, at) => drifting[(7 * at) % drifting.length]!);
    expect(new Set(mixed).size).toBe(drifting.length);
    expect(await fitted(mixed)).toEqual(await fitted(drifting));
  });

  it("fits an impedance as the voltages that it was computed from where their load is said, with degrees", async () => {
    const load = { resistance: 200e3, capacitance: 470e-12 };
    const across = { resistance: 1e6, capacitance: 0 };
    const frequencies = Array.from({ length: 40 }, (_, k) => 100 * 2 ** (k / 6));
    const points = frequencies.map((hertz) => coilImpedance(coil, hertz, across));
    const table = {
      frequencies,
      ohms: points.map(({ re, im }) => Math.hypot(re, im)),
      degrees: points.map(({ re, im }) => (Math.atan2(im, re) * 180) / Math.PI),
    };
    const request = { method: "impedance", table, load, resistance: coil.resistance, across };
    const { method, coil: fitted } = (await post("/api/fit", request)).json();
    expect(method).toBe("two-loads");
    expect(fitted.inductance / coil.inductance).toBeCloseTo(1, 2);
    const { degrees: _, ...sizes } = table;
    const { errors } = (await post("/api/fit", { ...request, table: sizes })).json();
    expect(errors).toEqual([{ path: "table", message: expect.stringContaining("no degrees") }]);
    const short = (await post("/api/fit", { ...request, table: { ...table, errors: [0.01] } })).json();
    expect(short.errors).toEqual([{ path: "table", message: expect.stringContaining("different lengths") }]);
    const ranges = async (stated: object) => (await post("/api/fit", { ...request, ...stated })).json();
    const errors01 = frequencies.map(() => 0.01);
    const both = await ranges({ precision: 0.01, table: { ...table, errors: errors01 } });
    expect(both.errors).toEqual([{ path: "precision", message: expect.stringContaining("only one of the two") }]);
    // Of the impedance, not of the ratio, which a hundredth of the impedance hardly moves where the load hardly shows.
    const normal = createNormal(8);
    const ohms = table.ohms.map((each) => each * Math.exp(0.01 * normal()));
    const noisy = { ...table, ohms, degrees: table.degrees.map((each) => each + 0.57 * normal()) };
    const stated = await ranges({ precision: 0.01, table: noisy, loss: "resistor" });
    expect(stated.precision).toEqual({ value: 0.01, estimated: false });
    const listed = await ranges({ table: { ...noisy, errors: errors01 }, loss: "resistor" });
    for (const [i, { relativeError }] of stated.values.entries())
      expect(Math.abs(relativeError / listed.values[i].relativeError - 1)).toBeLessThan(0.1);
  });

  it("fits a voltage unloaded over loaded, as pasted text, and says what is off in which table", async () => {
    const [first, second] = [{ resistance: 200e3, capacitance: 470e-12 }, { capacitance: 10e-9 }];
    const request = {
      method: "two-loads",
      table: ["Hz; dB; degrees", ...ratios(first)].join("\n"),
      load: first,
      second: { table: ratios(second).join("\n"), load: { capacitance: "10n" } },
      across: { resistance: "1M" },
    };
    const reply = await post("/api/fit", request);
    expect(reply.status).toBe(200);
    const { method, coil: fitted, residuals } = reply.json();
    expect([method, residuals.length]).toEqual(["two-loads", 240]);
    for (const key of ["resistance", "inductance", "capacitance", "loss"] as const)
      expect(fitted[key] / coil[key]).toBeCloseTo(1, 2);
    const within = (
      await post("/api/fit", { ...request, load: { ...first, tolerance: 0.01 }, loss: "resistor" })
    ).json();
    expect(within.notes.join()).toContain("loads within 1 % of what was told");
    const refusals = [
      { ...request, load: { ...first, tolerance: 1 } },
      { ...request, second: undefined },
      { ...request, load: {} },
      { ...request, second: { ...request.second, table: "100, 0.2\n200, 0.3" } },
      { ...request, second: { ...request.second, table: "100, 0.2, 1\n200, none, 1" } },
    ];
    const told = [];
    for (const refusal of refusals) {
      const { status, json } = await post("/api/fit", refusal);
      told.push([status, json().errors?.[0].path]);
    }
    expect(told).toEqual([
      [400, "load.tolerance"],
      [422, undefined],
      [400, "load"],
      [400, "second.table"],
      [400, "second.table.line 2"],
    ]);
  });

  it("answers a DC resistance alone with a range", async () => {
    const reply = await post("/api/fit", { method: "resistance", resistance: "6.5k", type: "single" });
    const { ranges } = reply.json();
    expect(ranges.inductance.low).toBeLessThan(2.8);
    expect(ranges.inductance.high).toBeGreaterThan(2.8);
  });

  it("refuses data that cannot tell with 422 and what to measure besides", async () => {
    const readings = [
      { capacitance: "470p", frequency: 4266 },
      { capacitance: "480p", frequency: 4230 },
    ];
    const reply = await post("/api/fit", { method: "resonances", resistance: "6k", readings });
    expect(reply.status).toBe(422);
    expect(reply.json().type).toBe("urn:presolder:problem:data-insufficient");
    expect(reply.json().detail).toMatch(/capacitors farther apart/);
  });

  it.each([
    ["a word for a number", "Hz,ohms\n100,6000\n200,many\n", "table.line 3"],
    ["a decimal comma", "100;6000,5\n200;6100\n", "table.line 1"],
    ["a frequency of 0", "0,6000\n100,6001\n", "table.line 1"],
    ["one column", "100\n200\n", "table.line 1"],
  ])("refuses %s in a table, naming its line", async (_name, table, path) => {
    const reply = await post("/api/fit", { method: "impedance", table });
    expect([reply.status, reply.json().errors[0].path]).toEqual([400, path]);
  });

  it.each([
    ["an unknown method", { method: "guess" }],
    ["lists of different lengths", { method: "impedance", table: { frequencies: [1, 2], ohms: [1] } }],
    ["a negative impedance", { method: "impedance", table: { frequencies: [1, 2], ohms: [1, -1] } }],
  ])("refuses %s", async (_name, request) => {
    expect((await post("/api/fit", request)).status).toBe(400);
  });
});
