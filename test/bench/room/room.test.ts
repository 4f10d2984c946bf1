import { describe, expect, test } from "vitest";
import { POLE_SPACINGS, PRESETS, SCALES, WIDE_SPREAD } from "../../../src/bench/room/figures.ts";
import { boxOutline, type Outline, type Point } from "../../../src/bench/room/geometry/outline.ts";
import type { Measures, PartMeasures } from "../../../src/bench/room/measures.ts";
import { roomFor } from "../../../src/bench/room/room.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";

const mm = (millimetres: number) => millimetres / 1000;
const box = (left: number, low: number, right: number, high: number): Outline =>
  boxOutline([mm(left), mm(low)], [mm(right), mm(high)]);
const line = (...points: readonly Point[]): Outline => points.map(([x, y]) => [mm(x), mm(y)]);

/** A volume at 50, 80 mm and a tone at 90, 80 mm, or as said; a humbucker 40 mm from the bridge. */
const build = (tone = { x: 0.09, y: 0.08 }) =>
  readBuild({
    presolder: 1,
    parts: {
      volume: { kind: "pot", resistance: "250k", place: { x: 0.05, y: 0.08 } },
      tone: { kind: "pot", resistance: "250k", place: tone },
      jack: { kind: "jack" },
      bridge: {
        kind: "pickup",
        coils: {
          slug: { resistance: "4k", inductance: "2H", distance: "31mm" },
          screw: { resistance: "4k", inductance: "2H", distance: "49mm" },
        },
      },
    },
    wires: [],
    strings: { scale: "640mm" },
  });

const CAVITY = { name: "controls", outline: box(20, 60, 120, 100), depth: 0.04 };

function told(change: Partial<Measures>, tone?: { x: number; y: number }) {
  return roomFor(build(tone), { cavities: [CAVITY], parts: {}, guard: {}, tolerance: 0.0005, ...change });
}
const of = (kind: string, part: string, { clearances }: ReturnType<typeof told>) =>
  clearances.find((each) => each.kind === kind && each.part === part)!;
const side = (volume: PartMeasures, outline: Outline = CAVITY.outline) =>
  of("side", "volume", told({ parts: { volume }, cavities: [{ name: "controls", outline }] }));

/** Millimetres, to the hundredth that is promised. */
const near = (clearance: number | null, millimetres: number) =>
  expect(Math.abs(clearance! * 1000 - millimetres)).toBeLessThan(0.01);

describe("a part beside the wall of its cavity", () => {
  test("goes in with what is left of 20 mm to the wall", () => {
    const clearance = side({ outline: { round: 0.024 } });
    near(clearance.clearance, 8);
    expect([clearance.verdict, clearance.tolerance]).toEqual(["goes in", 0.001]);
    const [[, y], [, wall]] = clearance.where!;
    near(Math.abs(y - wall), 8);
  });

  test("is tight within the tolerance of both lines, to either side of nothing", () => {
    expect(side({ outline: { box: [0.02, 0.0385] } }).verdict).toBe("tight");
    expect(side({ outline: { box: [0.02, 0.0415] } }).verdict).toBe("tight");
    expect(side({ outline: { box: [0.02, 0.0425] } }).verdict).toBe("does not go in");
    expect(side({ outline: { box: [0.02, 0.0375] } }).verdict).toBe("goes in");
  });

  test("partly in the wood is short of what it reaches over the line, wholly outside of its far end", () => {
    near(side({ outline: { round: 0.024 } }, box(40, 60, 120, 100)).clearance, -2);
    near(side({ outline: { round: 0.024 } }, box(80, 60, 120, 100)).clearance, -42);
  });

  test("is stopped by a spur of wood as deep as the spur reaches into it", () => {
    // Two millimetres wide, from the wall at y 100 down to y 85: within the box of 20 x 20 about 50, 80 by 5 mm, one from its middle line.
    const spur = line([20, 60], [120, 60], [120, 100], [51, 100], [51, 85], [49, 85], [49, 100], [20, 100]);
    near(side({ outline: { box: [0.02, 0.02] } }, spur).clearance, -5);
    near(side({ outline: { box: [0.02, 0.006] } }, spur).clearance, 2);
  });

  test("turns with the part: a box that goes in lying does not go in standing", () => {
    const parts = { volume: { outline: { box: [0.02, 0.044] as const } } };
    expect(of("side", "volume", told({ parts })).verdict).toBe("does not go in");
    const turned = { ...build(), parts: { ...build().parts } };
    const volume = turned.parts.volume!;
    turned.parts.volume = { ...volume, place: { x: 0.05, y: 0.08, turn: 90 } };
    const { clearances } = roomFor(turned, { cavities: [CAVITY], parts, guard: {}, tolerance: 0.0005 });
    near(clearances.find(({ kind }) => kind === "side")!.clearance, 8);
  });

  test("counts lugs and cable where they stand out", () => {
    const lugs = { side: "treble", reach: 0.018, width: 0.012 } as const;
    const clearance = side({ outline: { round: 0.024 }, lugs });
    near(clearance.clearance, 2);
    expect(clearance.message).toMatch(/^Its lugs have 2(\.01)? mm to the wall of controls/);
  });

  test("takes the line of a photograph to be off by what it says", () => {
    const cavities = [{ ...CAVITY, tolerance: 0.01 }];
    const { verdict, tolerance } = of(
      "side",
      "volume",
      told({ cavities, parts: { volume: { outline: { round: 0.024 } } } }),
    );
    expect([verdict, tolerance]).toEqual(["tight", 0.0105]);
  });

  test("lies in the cavity that is meant for it, else in the one that it goes into best", () => {
    const pocket = { name: "pocket", outline: box(30, 62, 80, 98), depth: 0.045 };
    const volume = { outline: { round: 0.024 }, depth: 0.042 } as const;
    const best = told({ cavities: [CAVITY, pocket], parts: { volume } });
    expect(of("depth", "volume", best)).toMatchObject({ against: "pocket", clearance: 0.003, verdict: "goes in" });
    const meant = told({ cavities: [{ ...CAVITY, for: ["volume"] }, pocket], parts: { volume } });
    expect(of("depth", "volume", meant)).toMatchObject({ against: "controls", clearance: -0.002 });
    expect(meant.text).toMatch(/^The guard does not go in\. Volume, depth: It reaches 2 mm deeper than controls is\./);
  });
});

describe("what was not measured", () => {
  test("is asked for and passes nothing", () => {
    const { clearances, asked, text } = told({ parts: { volume: { outline: "pot-24" } } });
    const depth = clearances.find(({ kind, part }) => kind === "depth" && part === "volume")!;
    expect(depth).toMatchObject({
      clearance: null,
      verdict: "not said",
      message: "depth not said: measure from the guard's underside to its lowest point",
    });
    expect(asked).toContainEqual(expect.objectContaining({ of: "volume", what: "depth" }));
    expect(asked).toContainEqual(expect.objectContaining({ of: "tone", what: "outline" }));
    expect(asked.filter(({ of }) => of === "controls")).toEqual([]);
    expect(text).toMatch(/^As far as it was measured, the guard goes in\. \d+ things are not said yet\./);
    expect(told({}).text).toMatch(/^Whether the guard goes in cannot be said yet\./);
  });

  test("a part without a place is told so and not put anywhere", () => {
    const bare = build();
    const { place: _, ...volume } = bare.parts.volume!;
    const measures = { cavities: [CAVITY], parts: { volume: { outline: "pot-24" } }, guard: {}, tolerance: 0 } as const;
    const room = roomFor({ ...bare, parts: { ...bare.parts, volume } as never }, measures);
    expect(of("side", "volume", room)).toMatchObject({
      clearance: null,
      message: expect.stringMatching(/^no place said/),
    });
    expect(room.shapes).toEqual([]);
  });
});

describe("two parts", () => {
  const parts = { volume: { outline: { round: 0.024 } }, tone: { outline: { round: 0.024 } } } as const;
  test("have what their bodies leave between them, once a pair", () => {
    const { clearances } = told({ parts });
    const between = clearances.filter(({ kind }) => kind === "between parts");
    expect(between).toHaveLength(1);
    near(between[0]!.clearance, 16);
  });

  test("overlap by what they have to be moved apart, even one upon the other", () => {
    near(of("between parts", "volume", told({ parts }, { x: 0.07, y: 0.08 })).clearance, -4);
    near(of("between parts", "volume", told({ parts }, { x: 0.05, y: 0.08 })).clearance, -24);
  });

  test("meet at the lugs that one turns to the other", () => {
    const lugs = { side: "neck", reach: 0.03, width: 0.01 } as const;
    const { clearance, message } = of(
      "between parts",
      "volume",
      told({ parts: { ...parts, volume: { ...parts.volume, lugs } } }),
    );
    // The lugs end at 80 mm, the other's body begins at 78 mm; at 5 mm off its middle line it stands 1.1 mm back.
    expect(clearance).toBeLessThan(-0.0019);
    expect(message).toMatch(/lugs and the body of the tone overlap by 2(\.01)? mm/);
  });
});

describe("poles, threads and screws", () => {
  const strings = { nut: 0.036, bridge: 0.052, beside: 0.001 };
  test("the strings' spread is taken along the straight line from bridge to nut", () => {
    // At 40 of 640 mm: 52 - 16/16 = 51 mm; poles over 49.2 mm leave 0.9 mm on either side.
    const clearance = of("pole spacing", "bridge", told({ strings, parts: { bridge: { poleSpacing: 0.0492 } } }));
    near(clearance.clearance, 0.1);
    expect(clearance.verdict).toBe("tight");
    expect(clearance.message).toMatch(
      /spread over 51 mm .* pass 0\.9 mm outside .* nearest that is sold is 50 mm .* wide spacing/,
    );
    near(of("pole spacing", "bridge", told({ strings, parts: { bridge: { poleSpacing: 0.056 } } })).clearance, -1.5);
  });

  test("a thread goes through plate, nut and washers or does not", () => {
    const guard = { thickness: 0.0025, stack: 0.0045 };
    near(of("bushing", "volume", told({ guard, parts: { volume: { outline: "pot-24" } } })).clearance, 3);
    near(of("bushing", "volume", told({ guard, parts: { volume: { bushing: 0.005 } } })).clearance, -2);
    expect(of("bushing", "tone", told({ guard })).verdict).toBe("not said");
  });

  test("a screw finds wood beside a cavity, none over it, and stays within the guard", () => {
    const guard = { screws: line([10, 80], [22, 80], [150, 80]), screwDiameter: 0.003, outline: box(0, 0, 151, 120) };
    const { clearances } = told({ guard });
    const [worst, edge, fine] = clearances.filter(({ kind }) => kind === "screw holes");
    near(worst!.clearance, -3.5);
    expect(worst).toMatchObject({ against: "controls", verdict: "does not go in" });
    near(edge!.clearance, -0.5);
    expect(edge!.message).toMatch(/^Screw 3 breaks out of the guard/);
    near(fine!.clearance, 8.5);
  });
});

test("the least room comes first and what is not said last", () => {
  const { clearances } = told({ parts: { volume: { outline: "pot-24", depth: 0.05 }, tone: { outline: "pot-17" } } });
  const numbers = clearances.map(({ clearance }) => clearance ?? Number.POSITIVE_INFINITY);
  expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
  expect(clearances[0]).toMatchObject({ part: "volume", kind: "depth" });
});

test("every figure says where it was published, and what was taken of them is told", () => {
  const sources = [...Object.values(PRESETS), POLE_SPACINGS.humbucker, POLE_SPACINGS.single, WIDE_SPREAD, SCALES];
  for (const { source } of sources)
    expect(source).toMatch(/^(public repository \w+\/\w+|data sheet, \S+|retail listings)/);
  const { figures } = told({ parts: { volume: { outline: "pot-24" } } });
  expect(figures).toEqual([{ part: "volume", what: PRESETS["pot-24"].title, source: PRESETS["pot-24"].source }]);
});
