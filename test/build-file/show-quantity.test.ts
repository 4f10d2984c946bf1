import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parseQuantity } from "../../src/build-file/quantity.ts";
import { shortQuantity, showQuantity } from "../../src/build-file/show-quantity.ts";

describe("a quantity in words", () => {
  test.each([
    [22e-9, "capacitance", "22 nF"],
    [0.022e-6, "capacitance", "22 nF"],
    [250_000, "resistance", "250 kΩ"],
    [999.4, "resistance", "999.4 Ω"],
    [2.4, "inductance", "2.4 H"],
    [0.041, "length", "41 mm"],
    [100e-12, "capacitancePerLength", "100 pF/m"],
    [0, "capacitance", "0 F"],
    [4e-13, "capacitance", "0.4 pF"],
  ] as const)("has the prefix that leaves 1 to 999: %f as a %s is %s", (value, dimension, text) => {
    expect(showQuantity(value, dimension)).toBe(text);
  });

  test("that rounds up to the next prefix has that one", () => {
    expect(showQuantity(999.96, "resistance")).toBe("1 kΩ");
    expect(showQuantity(999_600, "resistance", 3)).toBe("1 MΩ");
  });

  test("has as many figures as are asked for", () => {
    expect(showQuantity(5786.4, "resistance", 3)).toBe("5.79 kΩ");
  });

  test("is read back as what it says", () => {
    const digits = fc.integer({ min: 1, max: 9999 });
    fc.assert(
      fc.property(digits, fc.integer({ min: -12, max: -5 }), (mantissa, exponent) => {
        const farads = Number(`${mantissa}e${exponent}`);
        expect(parseQuantity(showQuantity(farads, "capacitance"), "capacitance").value / farads).toBeCloseTo(1, 12);
      }),
    );
  });
});

test.each([
  [250_000, "250k"],
  [1e6, "1M"],
  [4700, "4.7k"],
  [22e-9, "22n"],
])("%f without its unit is %s", (value, text) => {
  expect(shortQuantity(value)).toBe(text);
});
