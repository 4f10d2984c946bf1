import { describe, expect, it } from "vitest";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { parseSettings, type RawSettings } from "../../../src/build-file/settings.ts";
import { levelMatchedDifference } from "../../../src/choice/compare/difference.ts";
import { flatDrive } from "../../../src/choice/drive.ts";
import { energiesFor, featuresFor, Guard } from "../../../src/choice/guard.ts";
import { preferredValues } from "../../../src/choice/search/e-series.ts";
import { search } from "../../../src/choice/search/search.ts";
import { brightnessCams } from "../../../src/choice/search/wish.ts";
import { onePickup, threeSingles } from "../../fixtures/circuits.ts";

const pot = (resistance: number | string, role: string) => ({ kind: "pot", role, resistance, taper: "audio" });
const plain = readBuild(onePickup());
const guard = (changes: Parameters<typeof onePickup>[0]) => new Guard(readBuild(onePickup(changes)));
const at = (of: Guard, raw: RawSettings = {}) => parseSettings(of.controls, raw);

describe("preferred values (IEC 60063)", () => {
  it("E6, E12 and E24 have their values in every decade, ends included", () => {
    expect(preferredValues("E6", 1e-9, 1e-7)).toEqual([
      1e-9, 1.5e-9, 2.2e-9, 3.3e-9, 4.7e-9, 6.8e-9, 1e-8, 1.5e-8, 2.2e-8, 3.3e-8, 4.7e-8, 6.8e-8, 1e-7,
    ]);
    expect(preferredValues("E12", 100e3, 1e6)).toHaveLength(13);
    expect(preferredValues("E24", 4.7e3, 5.6e3)).toEqual([4700, 5100, 5600]);
  });
});

describe("a search that tries everything", () => {
  const volumes = [250e3, 500e3, 1e6];
  const tones = [100e3, 250e3, 500e3];
  const lengths = [1, 2, 3, 4, 5, 6, 7, 8];

  it("returns the combination whose peak is nearest to the wish, as loops over every value find it", () => {
    const wished = 3600;
    // Some combinations are too dark to have a peak; those cannot be wished for.
    const all = volumes.flatMap((volume) =>
      tones.flatMap((tone) =>
        lengths.flatMap((length) => {
          const of = guard({
            parts: { volume: pot(volume, "volume"), tone: pot(tone, "tone") },
            rest: { cable: { length, capacitance: "100p" } },
          });
          const { peak } = featuresFor(of.transfers(at(of)));
          return peak ? [{ values: [volume, tone, length], cost: Math.abs(Math.log2(peak.frequency / wished)) }] : [];
        }),
      ),
    );
    const wanted = all.toSorted((a, b) => a.cost - b.cost).slice(0, 10);
    const result = search(
      plain,
      [
        { kind: "part", part: "volume", values: volumes, orNone: false },
        { kind: "part", part: "tone", values: tones, orNone: false },
        { kind: "cable", values: lengths },
      ],
      { kind: "peak", frequencyHz: wished, settings: at(new Guard(plain)) },
    );
    expect(result).toMatchObject({ combinations: 72, tried: 72, exhaustive: true });
    expect(result.best.map(({ values }) => values.map(({ value }) => value))).toEqual(
      wanted.map(({ values }) => values),
    );
    for (const [i, { cost }] of result.best.entries()) expect(cost).toBeCloseTo(wanted[i]!.cost, 9);
  });

  it("finds a hidden cap and pot from the curve of the guard that has them", () => {
    const hidden = guard({ parts: { cap: { kind: "cap", capacitance: "6.8n" }, tone: pot(500e3, "tone") } });
    const result = search(
      plain,
      [
        { kind: "part", part: "cap", values: preferredValues("E12", 1e-9, 1e-7), orNone: false },
        { kind: "part", part: "tone", values: [100e3, 250e3, 500e3, 1e6], orNone: false },
      ],
      {
        kind: "like",
        settings: at(new Guard(plain), { tone: 3 }),
        target: { guard: hidden, settings: at(hidden, { tone: 3 }) },
      },
    );
    expect(result.best[0]!.values.map(({ value }) => value)).toEqual([6.8e-9, 500e3]);
    expect(result.best[0]!.cost).toBeLessThan(1e-6);
    expect(result.best[1]!.cost).toBeGreaterThan(0.01);
    expect(result.now!.cost).toBeGreaterThan(result.best[0]!.cost);
  });

  it("leaves a part out where that is best, and null stands for it", () => {
    const target = guard({});
    const bled = readBuild(
      onePickup({
        parts: { bleed: { kind: "cap", capacitance: "1n" } },
        wires: [...(onePickup() as { wires: unknown[] }).wires, ["bleed.a", "volume.3"], ["bleed.b", "volume.2"]],
      }),
    );
    const result = search(bled, [{ kind: "part", part: "bleed", values: [470e-12, 1e-9], orNone: true }], {
      kind: "like",
      settings: at(new Guard(bled), { volume: 5 }),
      target: { guard: target, settings: at(target, { volume: 5 }) },
    });
    expect(result.best[0]!.values[0]!.value).toBeNull();
    expect(result.best[0]!.cost).toBeLessThan(1e-9);
  });
});

describe("each wish is measured by what it says", () => {
  it("a bleed that keeps the treble is the one whose curve at 5 is most like the one at 10", () => {
    const caps = preferredValues("E6", 220e-12, 2.2e-9);
    const between = ["volume.3", "volume.2"] as const;
    const result = search(plain, [{ kind: "across", add: "cap", between, values: caps, orNone: true }], {
      kind: "keeps-treble",
      settings: at(new Guard(plain)),
      dial: 5,
    });
    const costs = [null, ...caps].map((farads) => {
      const bleed = farads === null ? {} : { bleed: { kind: "cap", capacitance: farads } };
      const legs =
        farads === null
          ? []
          : [
              ["bleed.a", "volume.3"],
              ["bleed.b", "volume.2"],
            ];
      const of = guard({ parts: bleed, wires: [...(onePickup() as { wires: unknown[] }).wires, ...legs] });
      const [full, half] = [10, 5].map((volume) => energiesFor(of.transfers(at(of, { volume })), flatDrive()));
      return { farads, cost: levelMatchedDifference(full!, half!).rmsDb };
    });
    const wanted = costs.reduce((best, next) => (next.cost < best.cost ? next : best));
    expect(wanted.farads).not.toBeNull();
    expect(result.best[0]!.values[0]!.value).toBe(wanted.farads);
    expect(result.best[0]!.cost).toBeCloseTo(wanted.cost, 9);
    // A bleed changes nothing at 10, and what it does elsewhere is told.
    const full = result.best[0]!.elsewhere.find(({ label }) => label === "tone 10, volume 10")!;
    const half = result.best[0]!.elsewhere.find(({ label }) => label === "tone 10, volume 5")!;
    expect(Math.abs(full.largest.difference)).toBeLessThan(0.01);
    expect(Math.abs(half.largest.difference)).toBeGreaterThan(1);
  });

  it("a tone pot that sounds halfway at 5 has a taper well under a half", () => {
    const midpoints = [0.05, 0.1, 0.15, 0.2, 0.35, 0.5];
    const result = search(plain, [{ kind: "taper", part: "tone", values: midpoints }], {
      kind: "tone-halfway",
      settings: at(new Guard(plain)),
    });
    const share = (midpoint: number) => {
      const of = guard({ parts: { tone: { ...pot(250e3, "tone"), midpoint } } });
      const [open, half, shut] = [10, 5, 0].map((tone) => brightnessCams(of, at(of, { tone }))!);
      return (half! - shut!) / (open! - shut!);
    };
    const wanted = midpoints.toSorted((a, b) => Math.abs(share(a) - 0.5) - Math.abs(share(b) - 0.5));
    expect(result.best.map(({ values }) => values[0]!.value)).toEqual(wanted);
    expect(wanted[0]).toBeLessThan(0.35);
  });

  // The bridge has no tone pot in this guard, and so is brighter than the neck.
  it("a bridge pickup is made as dark as the neck by a resistor across it", () => {
    const three = readBuild(threeSingles({ rest: { load: { resistance: "1M" } } }));
    const base = new Guard(three);
    const settings = parseSettings(base.controls, { lever: 1 });
    const as = [parseSettings(base.controls, { lever: 5 })];
    const result = search(
      three,
      [
        {
          kind: "across",
          add: "resistor",
          between: ["bridge.hot", "bridge.ground"],
          values: preferredValues("E12", 47e3, 2.2e6),
          orNone: true,
        },
      ],
      { kind: "as-bright", settings, as },
    );
    expect(result.best[0]!.cost).toBeLessThan(result.now!.cost);
    expect(result.best[0]!.says).toMatch(/of the ear's bands \(Cam\) (brighter|darker)$/);
  });

  it("a resistor cut into a wire stands in series, and none of it is the wire itself", () => {
    const result = search(
      plain,
      [{ kind: "in-wire", wire: ["volume.3", "pickup.hot"], values: [10e3, 100e3], orNone: true }],
      {
        kind: "like",
        settings: at(new Guard(plain)),
        target: { guard: new Guard(plain), settings: at(new Guard(plain)) },
      },
    );
    expect(result.best.map(({ values }) => values[0]!.value)).toEqual([null, 10e3, 100e3]);
    expect(result.best[0]!.cost).toBeLessThan(1e-9);
  });
});

describe("a search too large for trying everything", () => {
  it("says so, and still finds the hidden values", () => {
    const hidden = guard({
      parts: {
        cap: { kind: "cap", capacitance: "33n" },
        tone: pot(270e3, "tone"),
      },
    });
    const settings = { tone: 4, volume: 8 };
    const result = search(
      plain,
      [
        { kind: "part", part: "cap", values: preferredValues("E24", 1e-9, 1e-7), orNone: false },
        { kind: "part", part: "tone", values: preferredValues("E12", 100e3, 1e6), orNone: false },
        { kind: "cable", values: [2, 3, 4, 5, 6, 7, 8, 10] },
      ],
      {
        kind: "like",
        settings: at(new Guard(plain), settings),
        target: { guard: hidden, settings: at(hidden, settings) },
      },
      { most: 2500 },
    );
    expect(result.combinations).toBe(49 * 13 * 8);
    expect(result.exhaustive).toBe(false);
    expect(result.method).toContain("may have been missed");
    expect(result.tried).toBeLessThan(result.combinations);
    expect(result.best[0]!.values.map(({ value }) => value)).toEqual([33e-9, 270e3, 5]);
  });
});

describe("free parts that do not fit the build are refused by name", () => {
  const wish = { kind: "peak", frequencyHz: 3000, settings: at(new Guard(plain)) } as const;
  it.each([
    [
      { kind: "part", part: "cup", values: [1e-9], orNone: false },
      /free.0.part: there is no part "cup".*did you mean "cap"/,
    ],
    [{ kind: "part", part: "jack", values: [1], orNone: false }, /"jack" is a jack; expected a cap, resistor, pot/],
    [
      { kind: "across", add: "cap", between: ["volume.3", "volume.9"], values: [1e-9], orNone: false },
      /free.0.between: there is no lug "volume.9"/,
    ],
    [
      { kind: "in-wire", wire: ["volume.3", "jack.tip"], values: [1e3], orNone: false },
      /no wire from "volume.3" to "jack.tip"/,
    ],
  ] as const)("%o", (spec, message) => {
    expect(() => search(plain, [spec], wish)).toThrow(message);
  });
});
