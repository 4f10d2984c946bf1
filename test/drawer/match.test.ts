import { describe, expect, test } from "vitest";
import { matchGuards } from "../../src/drawer/match.ts";
import { partOfPiece, piecesOf } from "../../src/drawer/pieces.ts";
import { takePieces } from "../../src/drawer/take.ts";
import { cap, drawerOf, needs, part, pot } from "./drawers.ts";

const guard = (parts: object[], isSoldered = false) => ({
  build: { parts: Object.fromEntries(parts.map((each, index) => [`p${index}`, part(each)])) },
  isSoldered,
});

describe("guards beside the drawer", () => {
  test("a scarce part goes to the guard that nothing else would serve", () => {
    const drawer = drawerOf({ items: [{ part: cap("22n"), count: 2, measured: [21e-9, 23.5e-9] }] });
    const wanted = needs(cap("22n", { tolerance: 0.2 }), cap("22n", { tolerance: 0.05 }));
    const pieces = piecesOf(drawer, 2);
    expect(takePieces(wanted, pieces).map((index) => pieces[index!]!.measured)).toEqual([23.5e-9, 21e-9]);
  });

  test("what is soldered in is not free, and the answer says where it is", () => {
    const drawer = drawerOf({ items: [{ part: pot("250k"), count: 2 }] });
    const soldered = guard([pot("250k"), { kind: "terminal", role: "claw" }], true);
    const wanted = guard([pot("250k"), pot("250k")]);
    const { guards, free } = matchGuards(drawer, [soldered, wanted]);
    expect(free).toHaveLength(1);
    expect(guards[0]!.map(({ piece }) => piece?.source)).toEqual([{ item: 0 }]);
    expect(guards[1]!.map(({ piece, heldBy }) => [piece !== undefined, heldBy])).toEqual([
      [true, []],
      [false, [0]],
    ]);
  });

  test("a guard that is taken apart gives its parts back", () => {
    const drawer = drawerOf({ items: [{ part: pot("250k"), count: 1 }] });
    const { guards } = matchGuards(drawer, [guard([pot("250k")], false), guard([pot("250k")])]);
    expect(guards.map(([line]) => line!.piece?.source)).toEqual([{ item: 0 }, { item: 0 }]);
  });

  test("parts that lie about go before a kit is opened, and a kit before nothing", () => {
    const drawer = drawerOf({
      items: [{ part: cap("22n"), count: 1 }],
      kits: [{ name: "three caps", content: [{ part: cap("22n"), count: 3 }] }],
    });
    const [first, second] = matchGuards(drawer, [guard([cap("22n")]), guard([cap("22n"), cap("22n")])]).guards;
    expect(first!.map(({ piece }) => piece!.source)).toEqual([{ item: 0 }]);
    expect(second!.map(({ piece }) => "kit" in piece!.source).sort()).toEqual([false, true]);
  });

  test("a piece that was measured is that value in a guard made of it", () => {
    const drawer = drawerOf({
      items: [
        { part: cap("22n"), measured: ["21.3n"] },
        { part: pot("250k"), measured: [238e3] },
      ],
    });
    const [first, second] = piecesOf(drawer, 1).map(partOfPiece);
    expect(first).toMatchObject({ capacitance: expect.closeTo(21.3e-9, 15) });
    expect(second).toMatchObject({ resistance: 250e3, measured: 238e3 });
  });

  test("more values than parts, values of a switch, and no numbers are refused by name", () => {
    const faults = (item: object) => drawerOf.bind(null, { items: [item as never] });
    expect(faults({ part: cap("22n"), measured: [21e-9, 22e-9] })).toThrow("has 2 values of 1 parts");
    expect(faults({ part: { kind: "switch", type: "lever-5" }, measured: [1] })).toThrow("a switch has no one value");
    expect(faults({ part: cap("22n"), measured: ["21.3 H"] })).toThrow("measured");
    expect(faults({ part: { kind: "terminal" } })).toThrow("no part to own");
  });
});
