import { describe, expect, it } from "vitest";
import { rangeText, readShown } from "../../src/bench/meter/shown.ts";
import { withCover } from "../../src/build-file/cover.ts";
import { differencesOf, whereInWords } from "../../src/page/builds/differences.ts";
import { tiesOf } from "../../src/page/choice/find-value.ts";
import { curveCsv } from "../../src/page/curves/curve-csv.ts";
import { curveSvg } from "../../src/page/curves/curve-svg.ts";
import { levelRangeDb, referenceLevelDb } from "../../src/page/curves/levels.ts";
import { looksAlike, seriesLooks } from "../../src/page/curves/series.ts";
import { removePart } from "../../src/page/describe/remove-part.ts";
import { changedWire, wireEnds, wireHow } from "../../src/page/describe/wire-ends.ts";
import { largestDifference, largestOfAll } from "../../src/page/engine/curve-difference.ts";
import { familyOf } from "../../src/page/engine/family-of.ts";
import { KnownGuard } from "../../src/page/engine/known-guard.ts";
import { readSource } from "../../src/page/engine/source-reader.ts";
import { readingText } from "../../src/page/fields/quantity-field.ts";
import { fileStem } from "../../src/page/server/save-file.ts";
import { fitSettings } from "../../src/page/state/fit-settings.ts";
import { History } from "../../src/page/state/history.ts";
import { getAt, setAt } from "../../src/page/state/paths.ts";
import type { BuildSource, Reading } from "../../src/page/state/reading.ts";
import { onePickup, threeSingles } from "../fixtures/circuits.ts";
import { presetGuard } from "../fixtures/harness.ts";

function read(source: unknown): Reading {
  const result = readSource(source as BuildSource);
  if (!("reading" in result)) throw new Error("unreadable");
  return result.reading;
}

const withCap = (capacitance: string) => threeSingles({ parts: { cap: { kind: "cap", capacitance } } });

describe("quantities on the page", () => {
  it("that cannot be read have no reading", () => {
    expect(readingText("22 bananas", "capacitance")).toBe("");
    expect(readingText("", "resistance")).toBe("");
    expect(readingText("4k7", "resistance")).toBe("= 4.7 kΩ");
  });

  it("of a meter may be open", () => {
    expect(readShown("OL")).toEqual({ ohms: null });
    expect(readShown(" open ", 20_000)).toEqual({ ohms: null });
    expect(readShown("5.18k")).toEqual({ ohms: 5180 });
    expect(readShown("")).toBeUndefined();
    expect(() => readShown("cat")).toThrow(/cannot be read/);
  });

  it("of a meter over its range are above the range's end", () => {
    expect(readShown("OL", 20_000)).toEqual({ above: 20_000 });
    expect(readShown("over range", 2e6)).toEqual({ above: 2e6 });
  });

  it("of one value stand without a range", () => {
    expect(rangeText({ low: 250e3, high: 250_010 })).toBe("250 kΩ");
    expect(rangeText({ low: 5790, high: 6130 })).toBe("5.79 kΩ to 6.13 kΩ");
  });
});

describe("changes to a build", () => {
  it("leave the build before them as it was", () => {
    const before = { parts: { cap: { kind: "cap", capacitance: "22n" } }, wires: [["a", "b"]] };
    const after = setAt(before, ["parts", "cap", "capacitance"], "47n");
    expect(getAt(after, ["parts", "cap", "capacitance"])).toBe("47n");
    expect(before.parts.cap.capacitance).toBe("22n");
    expect(getAt(setAt(before, ["wires", 0, 1], "c"), ["wires", 0])).toEqual(["a", "c"]);
    expect(setAt(before, ["parts", "cap", "capacitance"], undefined).parts.cap).toEqual({ kind: "cap" });
    expect(setAt({}, ["cable", "length"], "3m")).toEqual({ cable: { length: "3m" } });
  });

  it("to a wire keep what else it says, and a plain wire plain", () => {
    expect(changedWire(["a", "b"], "to", "c")).toEqual(["a", "c"]);
    expect(changedWire(["a", "b"], "how", "leg")).toEqual({ from: "a", to: "b", how: "leg" });
    expect(changedWire({ from: "a", to: "b", how: "leg" }, "how", "wire")).toEqual(["a", "b"]);
    expect(changedWire({ from: "a", to: "b", colour: "red" }, "from", "c")).toEqual({
      from: "c",
      to: "b",
      colour: "red",
    });
    expect(wireEnds({ from: "a", to: "b" })).toEqual(["a", "b"]);
    expect(wireHow(["a", "b"])).toBe("wire");
  });

  it("that take a part out take its wires along, and no others", () => {
    const without = removePart(threeSingles() as BuildSource, "tone1");
    expect(Object.keys(without.parts)).not.toContain("tone1");
    expect(without.wires.flatMap(wireEnds).filter((lug) => lug.startsWith("tone1."))).toEqual([]);
    expect(without.wires.flatMap(wireEnds)).toContain("tone2.1");
  });

  it("can be walked back and forth, until a new one cuts off what was undone", () => {
    const history = new History<number>();
    for (const step of [1, 2, 3]) history.push(step);
    expect(history.undo()).toBe(2);
    expect(history.redo()).toBe(3);
    expect(history.redo()).toBeUndefined();
    history.undo();
    history.push(4);
    expect(history.canRedo).toBe(false);
    expect(history.undo()).toBe(2);
  });

  it("keep the settings that still fit", () => {
    const reading = read(onePickup());
    expect(fitSettings(reading, { lever: 3, tone: 4, volume: "nonsense" })).toEqual({ volume: 10, tone: 4 });
  });
});

describe("two builds", () => {
  it("differ in what was changed and in nothing else", () => {
    const a = withCap("22n") as BuildSource;
    const b = { ...(withCap("47n") as BuildSource), title: "another" };
    expect(differencesOf(a, b)).toEqual([{ where: "cap › capacitance", inA: "22n", inB: "47n", isWire: false }]);
    const rewired = { ...a, wires: a.wires.slice(1) };
    expect(differencesOf(a, rewired)).toEqual([
      { where: "wire bridge.hot — lever.A1 (wire)", inA: "yes", inB: "–", isWire: true },
    ]);
    expect(differencesOf(a, a)).toEqual([]);
  });

  it("say where they differ in a person's words, of a part that only one has too", () => {
    const a = read(withCap("22n"));
    const b = read(withCap("47n"));
    const words = (where: string, inA: string) =>
      whereInWords({ where, inA, inB: "–", isWire: false }, a, b).flat().join("");
    expect(words("tone1 › noLoad", "true")).toBe("Upper tone › no load");
    expect(words("cap › capacitance", "–")).toBe("cap › capacitance");
  });

  it("say what a cover, a taper of one's own and another type are, value by value and not key by key", () => {
    const guard = presetGuard("hss-push-pull-split");
    const { bridge, volume, middle } = guard.parts as Record<string, { coils: Record<string, object> }>;
    const { type: _type, ...untyped } = bridge as { type?: string; coils: Record<string, object> };
    const coils = Object.fromEntries(
      Object.entries(bridge!.coils).map(([name, coil]) => [name, withCover(coil as never)]),
    );
    const taper = [
      [0, 0],
      [0.5, 0.1],
      [1, 1],
    ];
    const parts = {
      bridge: { ...untyped, coils },
      volume: { ...volume, taper, noLoad: true },
      middle: { ...middle, type: "single-hot" },
    };
    const [a, b] = [read({ ...guard, parts: { ...guard.parts, ...parts } }), read(guard)];
    const told = differencesOf(a.source, b.source).map((each) => [
      whereInWords(each, a, b).flat().join(""),
      each.inA,
      each.inB,
    ]);
    const cover = ["humbucker and a cover of low loss", "open humbucker"];
    expect(told).toEqual(
      expect.arrayContaining([
        ["bridge › slug coil › metal that dims it", ...cover],
        ["bridge › screw coil › metal that dims it", ...cover],
        [
          "bridge › slug coil › its loss",
          "600 mH more, bridged by 11 kΩ; 525 kΩ across the coil",
          "600 mH more, bridged by 11 kΩ",
        ],
        ["bridge › type", "–", "Humbucker, medium wind, four conductors"],
        ["volume › taper", "measured at 3 turns", "audio"],
        ["volume › no load", "yes", "–"],
      ]),
    );
    for (const each of told.flat()) expect(each).not.toMatch(/shielding|\bcoils\b|› \d|\bsingle-|humbucker-/);
  });

  it("that differ in the tone cap differ most with the tone down, in a position that has one", () => {
    const [a, b] = [new KnownGuard(read(withCap("22n"))), new KnownGuard(read(withCap("47n")))];
    const open = { lever: 1, volume: 10, tone1: 10, tone2: 10 };
    expect(Math.abs(largestDifference(a, b, open).decibels)).toBeLessThan(0.05);
    const most = largestOfAll(a, b, open);
    expect(most.settings.tone1).toBe(0);
    expect(most.settings.lever).not.toBe(1);
    expect(Math.abs(most.decibels)).toBeGreaterThan(6);
  });
});

describe("curves", () => {
  const guard = new KnownGuard(read(threeSingles()));
  const settings = { lever: 4, volume: 10, tone1: 10, tone2: 10 };
  const family = familyOf(guard, settings, "tone");
  const picture = { family, view: "reference", band: undefined } as const;

  it("stand in a family of eleven tones, the current one equal to its own", () => {
    expect(family.behind.map((trace) => trace.name)).toEqual(Array.from({ length: 11 }, (_, tone) => `tone ${tone}`));
    expect(family.behind[10]!.magnitude).toEqual(family.current.magnitude);
  });

  it("become a table with a row a frequency and a column a curve, headed as the service heads them", () => {
    const rows = curveCsv(picture).split("\r\n");
    expect(rows.pop()).toBe("");
    expect(rows[0]!.split(",").slice(0, 3)).toEqual(["frequency (Hz)", "now (dB)", "tone 0 (dB)"]);
    expect(rows).toHaveLength(321);
    expect(rows.join()).not.toMatch(/NaN|Infinity/);
  });

  it("become a picture that escapes its title and holds no broken number", () => {
    const colours = {
      ink: "#000",
      grid: "#eee",
      current: "#00f",
      other: "#f80",
      familyFrom: "#aaaaaa",
      familyTo: "#bbbbbb",
      band: "#0002",
      paper: "#fff",
    };
    const svg = curveSvg(picture, 'A <b> & "c"', colours);
    expect(svg.split("\n").slice(0, 4).join("\n")).toContain("A &lt;b&gt; &amp; &quot;c&quot;");
    expect(/NaN|Infinity|undefined/.test(svg)).toBe(false);
    expect(svg.match(/<path d="M[^"]+L/g)).toHaveLength(12);
  });

  it("are dashed where they are the other guard's, and not where a family has one curve only", () => {
    const [tone] = family.behind;
    const ofOne = { ...family, behind: [tone!] };
    const ofBuilds = familyOf(guard, settings, "builds", guard);
    expect(seriesLooks(ofOne).map(({ dash }) => dash)).toEqual([undefined, undefined]);
    expect(seriesLooks(ofBuilds).map(({ dash }) => dash)).toEqual([[8, 5], undefined]);
    expect(looksAlike(ofOne, ofBuilds)).toBe(false);
    expect(looksAlike(ofOne, ofOne)).toBe(true);
  });

  it("are set level at 200 Hz between two points of the grid", () => {
    expect(referenceLevelDb(family.current.magnitude.map(() => 5))).toBeCloseTo(5, 12);
  });

  it("are shown in a range of whole steps that holds them, and of at most 48 dB", () => {
    expect(levelRangeDb([[-3, 4]])).toEqual([-18, 6]);
    expect(levelRangeDb([[-300, 0]])).toEqual([-42, 6]);
    expect(levelRangeDb([])).toEqual([-36, 12]);
  });
});

describe("file names", () => {
  it("keep letters and digits of the title", () => {
    expect(fileStem("HSS guard, 250 kΩ pots")).toBe("hss-guard-250-k-pots");
    expect(fileStem("../../etc")).toBe("etc");
    expect(fileStem(undefined)).toBe("guard");
  });
});

describe("what was found for a wish", () => {
  it("is a tie within a hundredth, and none where only one is best", () => {
    expect(tiesOf([{ cost: 2 }, { cost: 2.01 }, { cost: 2.1 }])).toEqual([true, true, false]);
    expect(tiesOf([{ cost: 0.001 }, { cost: 0.2 }])).toEqual([false, false]);
    expect(tiesOf([])).toEqual([]);
  });
});
