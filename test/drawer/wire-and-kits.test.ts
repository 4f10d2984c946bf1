import { describe, expect, test } from "vitest";
import { openKit } from "../../src/drawer/open-kit.ts";
import { checkWire } from "../../src/drawer/wire-lengths.ts";
import { cap, drawerOf, pot } from "./drawers.ts";

describe("wire by the metre", () => {
  test("comes off the reel of its colour first, then off one whose colour nobody said", () => {
    const { wires } = drawerOf({
      wires: [
        { kind: "cloth", length: "1m" },
        { kind: "cloth", colour: "Black", length: "60cm" },
        { kind: "plastic", colour: "black", length: "9m" },
      ],
    });
    const wanted = [
      { kind: "cloth" as const, colour: "black", metres: 0.9 },
      { kind: "cloth" as const, colour: "white", metres: 1 },
    ];
    expect(checkWire(wires, wanted)).toEqual([
      { ...wanted[0], there: 0.9, short: 0 },
      { ...wanted[1], there: 0.7, short: 0.3 },
    ]);
  });
});

describe("a kit that is opened", () => {
  const kit = { name: "wiring kit", count: 2, content: [{ part: pot("250k"), count: 2 }, { part: cap("22n") }] };

  test("lies there as parts, beside equal ones on their line", () => {
    const opened = openKit({ items: [{ part: pot("250k"), count: 1 }], kits: [kit] }, 0);
    expect(opened.items).toEqual([
      { part: pot("250k"), count: 3 },
      { part: cap("22n"), count: 1 },
    ]);
    expect(opened.kits![0]!.count).toBe(1);
  });

  test("is not there to be opened a second time", () => {
    const drawer = { kits: [{ ...kit, count: 0 }] };
    expect(openKit(drawer, 0)).toBe(drawer);
    expect(openKit(drawer, 3)).toBe(drawer);
  });
});
