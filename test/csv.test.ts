import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";
import { csvCell, csvTable, curvesCsv } from "../src/csv.ts";
import { describeWith } from "./tools.ts";

test.each(["=", "+", "-", "@"])("a cell that begins with %s becomes no formula", (start) => {
  expect(csvCell(`${start}1+1`)).toBe(`'${start}1+1`);
});

test("every line has its end, the last one too (RFC 4180, 2)", () => {
  expect(csvTable(["a", "b"], [["1", "2"]])).toBe("a,b\r\n1,2\r\n");
});

describeWith("scipy", "read by another program", () => {
  test("Python's csv module reads the headings and levels that went in", () => {
    const names = ['position 1, "split"', "two\nlines", "plain"];
    const curves = names.map((name, index) => ({ name, magnitude: Float64Array.of(-3.25, index / 8) }));
    const csv = curvesCsv(Float64Array.of(20, 20_000), curves);
    const read =
      "import csv, io, json, sys; print(json.dumps(list(csv.reader(io.StringIO(sys.stdin.read(), newline='')))))";
    const rows = JSON.parse(execFileSync("/usr/bin/python3", ["-c", read], { input: csv, encoding: "utf8" }));
    expect(rows).toEqual([
      ["frequency (Hz)", ...names.map((name) => `${name} (dB)`)],
      ["20.000", "-3.2500", "-3.2500", "-3.2500"],
      ["20000.000", "0.0000", "0.1250", "0.2500"],
    ]);
  });
});
