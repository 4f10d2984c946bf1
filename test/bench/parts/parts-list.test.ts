import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { describePart } from "../../../src/bench/parts/describe-part.ts";
import { partsList } from "../../../src/bench/parts/parts-list.ts";
import { capacitorCode, potCode, resistorBands, toleranceLetter } from "../../../src/bench/parts/printed-codes.ts";
import { buildSheet } from "../../../src/bench/sheet/build-sheet.ts";
import { readBuild } from "../../../src/build-file/read-build.ts";
import { partSchema } from "../../../src/build-file/schema.ts";
import { threeSingles } from "../../fixtures/circuits.ts";

// Codes of IEC 60062: two digits and the count of noughts in picofarads; F, G, J, K, M for 1, 2, 5, 10, 20 %.
describe("printed codes", () => {
  it.each([
    [1e-9, "102"],
    [10e-9, "103"],
    [100e-9, "104"],
    [22e-9, "223"],
    [47e-9, "473"],
    [470e-9, "474"],
    [470e-12, "471"],
    [680e-12, "681"],
    [68e-9, "683"],
    [2.2e-9, "222"],
  ])("print %f F as %s", (farads, code) => {
    expect(capacitorCode(farads)).toBe(code);
  });

  it("print nothing for values that the code cannot hold", () => {
    expect(capacitorCode(22.5e-9)).toBeNull();
    expect(capacitorCode(47e-12)).toBeNull();
  });

  it("know the tolerance letters", () => {
    expect([0.01, 0.02, 0.05, 0.1, 0.2, 0.15].map((fraction) => toleranceLetter({ fraction }))).toEqual([
      "F",
      "G",
      "J",
      "K",
      "M",
      null,
    ]);
  });

  it("have Z for −20/+80 %, which such ceramics are sold with", () => {
    const cap = { kind: "cap", capacitance: 22e-9, dielectric: "ceramic-y5v" } as Parameters<typeof describePart>[0];
    expect(describePart(cap)).toEqual({ what: "cap 22 nF −20/+80 %, Y5V ceramic", code: "223Z" });
  });

  it("put the taper letter before a pot's value", () => {
    expect(potCode(250e3, "audio")).toBe("A250K");
    expect(potCode(1e6, "linear")).toBe("B1M");
    expect(potCode(500e3, "reverse-audio")).toBe("C500K");
    expect(potCode(500e3, [[0, 0]])).toBeNull();
  });

  it("band resistors: 150 kΩ ±5 % is brown, green, yellow, gold", () => {
    expect(resistorBands(150e3, 0.05)).toBe("brown-green-yellow-gold");
    expect(resistorBands(4700, 0.1)).toBe("yellow-violet-red-silver");
    expect(resistorBands(152e3, 0.05)).toBeNull();
  });
});

describe("the parts list", () => {
  const build = readBuild(
    threeSingles({
      parts: { bleed: { kind: "cap", capacitance: "681J" }, cap2: { kind: "cap", capacitance: "22n" } },
      wires: [],
    }),
  );
  const { cuts } = buildSheet(build);
  const stock = (part: object, quantity: number) => ({ part: partSchema.parse(part), quantity });

  it("names parts in the trade's words", () => {
    const names = partsList(build, cuts).lines.map(({ what }) => what);
    expect(names).toContain("250 kΩ pot, audio taper (A)");
    expect(names).toContain("five-position lever switch, two poles");
    expect(names).toContainEqual(expect.stringMatching(/^single coil, .*reverse wound$/));
  });

  it("says nothing twice, and counts pickups alike in value together wherever they sit", () => {
    const pickups = { neck: "single-hot", middle: "single-vintage-rwrp", bridge: "single-hot" };
    const plan = { layout: "lever-5-one-tone", pickups, volume: "250k", tones: [{ pot: "250k", cap: "22n" }] };
    const { lines } = partsList(readBuild({ presolder: 1, plan }), []);
    expect(lines.filter(({ what }) => what.startsWith("single")).map(({ what, quantity }) => [what, quantity])).toEqual(
      [
        ["single coil, hot wind, 7.6 kΩ", 2],
        ["single coil, vintage wind, reverse wound, reverse polarity, 6 kΩ", 1],
      ],
    );
    const four = { ...plan, pickups: { ...pickups, bridge: "humbucker-medium" } };
    const what = partsList(readBuild({ presolder: 1, plan: four }), []).lines.map((line) => line.what);
    expect(what).toContain("humbucker, medium wind, four conductors, 4.1 kΩ + 4.1 kΩ");
  });

  it("gathers equal parts and adds up", () => {
    const { lines, totals, notes } = partsList(build, cuts);
    expect(lines.find(({ code }) => code === "A250K")).toMatchObject({
      quantity: 3,
      parts: ["volume", "tone1", "tone2"],
    });
    expect(lines.find(({ code }) => code === "223K")).toMatchObject({ quantity: 2, parts: ["cap", "cap2"] });
    expect(lines.find(({ code }) => code === "681J")).toMatchObject({ quantity: 1, toBuy: 1 });
    expect(totals.parts).toBe(Object.keys(build.parts).length);
    expect(totals.parts).toBe(lines.reduce((sum, { quantity }) => sum + quantity, 0));
    expect(notes.join()).toMatch(/makers differ/);
  });

  it("takes off what the drawer holds, and never more than is needed", () => {
    const drawer = [
      stock({ kind: "pot", resistance: "250k", taper: "audio" }, 2),
      stock({ kind: "pot", resistance: "250k", taper: "linear" }, 9),
      stock({ kind: "cap", capacitance: "0.022uF" }, 5),
    ];
    const { lines, totals } = partsList(build, cuts, drawer);
    expect(lines.find(({ code }) => code === "A250K")).toMatchObject({ quantity: 3, fromDrawer: 2, toBuy: 1 });
    expect(lines.find(({ code }) => code === "223K")).toMatchObject({ fromDrawer: 2, toBuy: 0 });
    expect(totals.fromDrawer).toBe(4);
    expect(totals.toBuy).toBe(totals.parts - 4);
  });

  it("says what stays over in the drawer: what the build has no use for, and what is too many", () => {
    const drawer = [
      stock({ kind: "cap", capacitance: "47n" }, 2),
      stock({ kind: "cap", capacitance: "22n" }, 3),
      stock({ kind: "pot", resistance: "250k", taper: "audio" }, 1),
      stock({ kind: "cap", capacitance: "0.022uF", tolerance: 0.05 }, 1),
    ];
    const { lines, staysOver } = partsList(build, cuts, drawer);
    expect(staysOver).toEqual([
      { what: "cap 47 nF ±10 %", code: "473K", quantity: 2, drawer: [0] },
      { what: "cap 22 nF ±10 %", code: "223K", quantity: 2, drawer: [1, 3] },
    ]);
    expect(lines.find(({ code }) => code === "223K")).toMatchObject({ fromDrawer: 2, drawer: [1, 3] });
    expect(lines.find(({ code }) => code === "681J")!.drawer).toEqual([]);
  });

  it("lets nothing vanish: what the drawer holds is used or stays over", () => {
    const parts = fc.constantFrom<object>(
      ...[22, 47].map((nano) => ({ kind: "cap", capacitance: `${nano}n` })),
      { kind: "pot", resistance: "250k", taper: "audio" },
      { kind: "pot", resistance: "500k", taper: "audio" },
      { kind: "switch", type: "lever-5" },
      { kind: "jack" },
    );
    const items = fc.array(fc.tuple(parts, fc.integer({ min: 1, max: 9 })), { maxLength: 8 });
    fc.assert(
      fc.property(items, (drawer) => {
        const stocked = drawer.map(([part, quantity]) => stock(part, quantity));
        const { totals, staysOver } = partsList(build, cuts, stocked);
        const held = stocked.reduce((sum, { quantity }) => sum + quantity, 0);
        expect(totals.fromDrawer + staysOver.reduce((sum, { quantity }) => sum + quantity, 0)).toBe(held);
      }),
      { numRuns: 60 },
    );
  });

  it("totals the wire of the cut list by colour", () => {
    const { wire, totals } = partsList(build, cuts);
    const metres = cuts.reduce((sum, { cut }) => sum + cut, 0);
    expect(totals.wireMetres).toBeCloseTo(metres, 9);
    expect(wire.reduce((sum, line) => sum + line.pieces, 0)).toBe(cuts.length);
  });
});
