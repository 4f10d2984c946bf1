import { describe, expect, test } from "vitest";
import { parseQuantity } from "../../src/build-file/quantity.ts";
import type { Dimension } from "../../src/build-file/units.ts";

const read = (text: number | string, dimension: Dimension) => parseQuantity(text, dimension);

describe("printed capacitor codes (IEC 60062; three digits: two figures and the count of noughts in picofarads)", () => {
  test.each([
    ["102", 1e-9],
    ["103", 10e-9],
    ["104", 100e-9],
    ["223", 22e-9],
    ["473", 47e-9],
    ["474", 470e-9],
    ["221", 220e-12],
    ["105", 1e-6],
  ])("%s is %d F", (code, farads) => {
    expect(read(code, "capacitance")).toEqual({ value: farads });
  });

  test.each([
    ["103M", 10e-9, 0.2],
    ["102K", 1e-9, 0.1],
    ["103K", 10e-9, 0.1],
    ["104K", 100e-9, 0.1],
    ["473K", 47e-9, 0.1],
    ["223J", 22e-9, 0.05],
    ["103G", 10e-9, 0.02],
  ])("%s is %d F within a fraction of %d", (code, farads, tolerance) => {
    expect(read(code, "capacitance")).toEqual({ value: farads, tolerance });
  });

  test.each(["220", "100", "047", "22", "4", "022", "107", "229"])("%s alone is refused as ambiguous", (text) => {
    expect(() => read(text, "capacitance")).toThrow(/ambiguous for a capacitor; write the unit/);
  });

  test("nothing is 0 farads, whatever its unit", () => {
    expect(read("0", "capacitance")).toEqual({ value: 0 });
    expect(read("000", "capacitance")).toEqual({ value: 0 });
  });

  test("what cannot be a capacitance is refused in words that help", () => {
    expect(() => read("-5", "capacitance")).toThrow('"-5" is negative');
    expect(() => read("100F", "capacitance")).toThrow(/would be 100 farads, out of range .* such as "100p" or "100n"/);
    expect(() => read("100K", "capacitance")).toThrow('write the unit, such as "100p" or "100n"');
  });
});

test("every spelling of 22 nF reads to the very same number", () => {
  const spellings = [
    ".022",
    "0.022",
    ".022uF",
    "0.022mfd",
    "0.022 MFD",
    "0.022uF",
    "0.022 uF",
    "0.022 \u00b5F",
    "0.022\u03bcF",
    "22n",
    "22nF",
    "22 nF",
    "223",
    "22000p",
    "22000pF",
    "22n0",
    "22e-9",
    "2.2e-8F",
    " 22n ",
  ];
  for (const text of spellings) expect(read(text, "capacitance").value, text).toBe(22e-9);
  expect(read(22e-9, "capacitance").value).toBe(22e-9);
});

describe("the letter that stands for the point (IEC 60062)", () => {
  test.each<[string, Dimension, number]>([
    ["4k7", "resistance", 4700],
    ["2M2", "resistance", 2_200_000],
    ["4R7", "resistance", 4.7],
    ["0R5", "resistance", 0.5],
    ["2n2", "capacitance", 2.2e-9],
    ["4p7", "capacitance", 4.7e-12],
    ["0u022", "capacitance", 22e-9],
    ["2H4", "inductance", 2.4],
    ["4k7ohm", "resistance", 4700],
    ["2n2F", "capacitance", 2.2e-9],
  ])("%s as %s is %d", (text, dimension, value) => {
    expect(read(text, dimension).value).toBe(value);
  });
});

describe("units as people write them", () => {
  test.each<[string, Dimension, number]>([
    ["250k", "resistance", 250_000],
    ["250K", "resistance", 250_000],
    ["250 kΩ", "resistance", 250_000],
    ["250 k\u2126", "resistance", 250_000],
    ["1M", "resistance", 1e6],
    ["1meg", "resistance", 1e6],
    ["0.5M", "resistance", 500_000],
    ["6100", "resistance", 6100],
    ["2.4H", "inductance", 2.4],
    ["2400mH", "inductance", 2.4],
    ["110pF", "capacitance", 110e-12],
    ["3m", "length", 3],
    ["10ft", "length", 3.048],
    ["10'", "length", 3.048],
    ["25.5in", "length", 0.6477],
    ['25.5"', "length", 0.6477],
    ["12mm", "length", 0.012],
    ["4.1cm", "length", 0.041],
    ["100p", "capacitancePerLength", 100e-12],
    ["100pF/m", "capacitancePerLength", 100e-12],
    ["4.5kHz", "frequency", 4500],
    ["82.4", "frequency", 82.4],
  ])("%s as %s is %d", (text, dimension, value) => {
    expect(read(text, dimension).value).toBeCloseTo(value, 15 - Math.ceil(Math.log10(Math.max(1, value))));
  });

  test("20 ft at 33 pF/ft is 660 pF and at 45 pF/ft 900 pF", () => {
    const feet = read("20ft", "length").value;
    expect(feet * read("33pF/ft", "capacitancePerLength").value * 1e12).toBeCloseTo(660, 9);
    expect(feet * read("45pF/ft", "capacitancePerLength").value * 1e12).toBeCloseTo(900, 9);
  });
});

describe("what cannot be read is refused with an example", () => {
  test.each([
    ["A500K", "500k"],
    ["B250k", "250k"],
    ["C1M", "1M"],
    ["A 500 K", "500k"],
    ["B504", "504"],
  ])("%s, as a pot is printed, is refused with what to write instead", (text, instead) => {
    expect(() => read(text, "resistance")).toThrow(`write "${instead}" and choose the taper`);
  });

  test("a decimal comma is refused with the point put in", () => {
    expect(() => read("0,022uF", "capacitance")).toThrow('decimal comma; write a decimal point: "0.022uF"');
    expect(() => read("4,7k", "resistance")).toThrow('"4.7k"');
    expect(() => read("250,000", "resistance")).toThrow("decimal comma");
  });

  test.each<[string, Dimension]>([
    ["", "resistance"],
    ["   ", "capacitance"],
    ["lots", "resistance"],
    ["250kk", "resistance"],
    ["22nH", "capacitance"],
    ["250k", "capacitance"],
    ["22M", "capacitance"],
    ["2.4F", "inductance"],
    ["3 yards", "length"],
    ["NaN", "resistance"],
    ["Infinity", "resistance"],
    ["1e999", "resistance"],
    ["0x10", "resistance"],
    ["1.2.3k", "resistance"],
    ["--5k", "resistance"],
    [`${"9".repeat(80)}k`, "resistance"],
  ])("%j as %s", (text, dimension) => {
    expect(() => read(text, dimension)).toThrow(/cannot be read; expected a quantity such as/);
  });

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])("the number %d", (value) => {
    expect(() => read(value, "resistance")).toThrow("expected a finite number");
  });
});

test.each([
  ["n47", "capacitance", 470e-12],
  ["R47", "resistance", 0.47],
  ["10 feet", "length", 3.048],
  ["1 inch", "length", 0.0254],
] as const)("%s is read as %s %d", (text, dimension, value) => {
  expect(read(text, dimension).value).toBeCloseTo(value, 15);
});
