import { describe, expect, test } from "vitest";
import { drawerFile, fromDrawerFile } from "../../../src/drawer/drawer-file.ts";
import { drawerInput, keptFrom } from "../../../src/drawer/kept-drawer.ts";
import {
  measuredFault,
  measuredIn,
  priceFault,
  priceIn,
  trackFault,
} from "../../../src/page/drawer/form/value-faults.ts";
import { shoppingCsv, shoppingText } from "../../../src/page/drawer/shopping-view.ts";

const DRAWER = {
  currency: "coins",
  items: [{ part: { kind: "cap" as const, capacitance: "22n" }, count: 2, measured: ["21.3n"], price: 1.5 }],
  kits: [{ name: "wiring kit", count: 1, content: [{ part: { kind: "jack" as const } }] }],
  wires: [{ kind: "cloth" as const, length: "2m" }],
};

describe("a drawer file", () => {
  test("says what it was saved of, word for word", () => {
    let last = 0;
    const kept = keptFrom(DRAWER, () => String(last++));
    expect(kept.items[0]!.id).not.toBe(kept.kits[0]!.id);
    expect(drawerInput(keptFrom(fromDrawerFile(drawerFile(kept)), () => "x"))).toEqual(DRAWER);
  });

  test.each(["", "{}", '{"presolderDrawer":2,"drawer":{}}', '{"presolderDrawer":1}'])("is not %o", (text) => {
    expect(() => fromDrawerFile(text)).toThrow("no drawer file");
  });
});

describe("a shopping list", () => {
  const told = {
    lines: [
      { what: "cap 22 nF, film", code: "223K", count: 2, price: 1.5, guards: ["Guard A", "Guard B"] },
      { what: "jack", code: null, count: 1, price: null, guards: ["Guard A"] },
    ],
    total: 3,
    isCheapest: true,
    staysOver: [],
    wire: [
      { kind: "cloth" as const, colour: "black", metres: 1, there: 0.6, short: 0.4 },
      { kind: "bare" as const, colour: "bare", metres: 1, there: 1, short: 0 },
    ],
  };

  test("is a table for a spreadsheet, with nothing where no price is known", () => {
    expect(shoppingCsv(told, "coins").split("\r\n")).toEqual([
      "what,printed on it,how many,price of one (coins),sum (coins),for",
      '"cap 22 nF, film",223K,2,1.50,3.00,"Guard A, Guard B"',
      "jack,,1,,,Guard A",
      '"black cloth wire, metres",,0.40,,,',
      "",
    ]);
  });

  test("is a few lines of text for a message", () => {
    expect(shoppingText(told, "")).toBe(
      "2 × cap 22 nF, film, printed 223K: 3.00\n1 × jack\n0.40 m black cloth wire\nSum of known prices: 3.00",
    );
  });
});

describe("values as they were measured", () => {
  test("are apart by commas, semicolons or spaces, however their units are written", () => {
    expect(measuredIn("21.3n, 22.1 nF; 20.9n 23n")).toEqual(["21.3n", "22.1 nF", "20.9n", "23n"]);
    expect(measuredIn("  ")).toEqual([]);
  });

  test.each([
    [["21n", "22n"], 2, undefined],
    [["21n", "22n"], 1, "2 values for 1 part; expected one a part at most"],
    [["21n", "0"], 2, "expected more than 0"],
  ])("%j of %d parts: %s", (values, most, fault) => {
    expect(measuredFault(values, "capacitance", most, "22n")).toBe(fault);
  });

  test.each([
    [["24k"], '"24k" is far from the 250 kΩ marked; expected a reading of such a part'],
    [["241k", "2M"], '"2M" is far from the 250 kΩ marked; expected a reading of such a part'],
    [["241k", "100k"], undefined],
  ])("%j of pots of 250k: %s", (values, fault) => {
    expect(measuredFault(values, "resistance", 2, "250k")).toBe(fault);
    expect(measuredFault(values, "resistance", 2, 250_000)).toBe(fault);
    expect(measuredFault(values, "resistance", 2, "what")).toBeUndefined();
  });
});

describe("a pot's track", () => {
  test.each(["500", "250", "1", "9999"])("is not %s without a unit", (text) => {
    expect(trackFault(text)).toBe(
      `"${text}" alone is ${text} ohms; write the unit: "${text}k", or "${text}R" if so little is meant`,
    );
  });

  test.each(["500k", "250000", "1M", "500R", "5k"])("may be %s", (text) => {
    expect(trackFault(text)).toBeUndefined();
  });
});

describe("a price", () => {
  test.each([
    ["6.50", 6.5],
    ["6,50", 6.5],
    ["12,5", 12.5],
    ["7", 7],
  ])("of %s is %d", (text, price) => {
    expect(priceFault(text)).toBeUndefined();
    expect(priceIn(text)).toBe(price);
  });

  test.each(["1,250", "1,2,3", "-1", "x", "6.50 coins"])("is not %s", (text) => {
    expect(priceFault(text)).toBe("expected a plain number, such as 4.50");
  });
});
