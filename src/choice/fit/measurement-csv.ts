import { type InputFault, refused } from "../../errors.ts";
import { MAX_FIT_POINTS } from "../../limits.ts";

/** Columns of a measurement file. */
export interface MeasurementColumns {
  readonly frequenciesHz: number[];
  readonly values: number[];
  /** Present where every line has a third number. */
  readonly thirds?: number[];
}

const MAX_FAULTS = 10;

function cells(line: string): string[] {
  // A semicolon or tab separates where there is one; else commas; else blanks.
  const separator = /[;\t]/.test(line) ? /[;\t]/ : line.includes(",") ? /,/ : /\s+/;
  return line
    .split(separator)
    .map((cell) => cell.trim().replace(/^"(.*)"$/, "$1"))
    .filter((cell, index, all) => cell !== "" || index < all.length - 1);
}

function isHeading(line: string): boolean {
  return !/^["\s]*[+-]?[\d.]/.test(line);
}

function lineFault(numbers: readonly number[], row: readonly string[]): string | undefined {
  if (row.length < 2 || row.length > 3) return `has ${row.length} columns; expected 2 or 3`;
  const bad = row.find((_, i) => !Number.isFinite(numbers[i]!));
  if (bad !== undefined) return `"${bad.slice(0, 30)}" is no number; expected digits with a decimal point`;
  return numbers[0]! > 0 ? undefined : `the frequency is ${numbers[0]}; expected more than 0 Hz`;
}

/**
 * Reads lines of two or three numbers: Hz, a value, and optionally degrees. Separated by commas, semicolons, tabs or blanks;
 * heading and `#` lines are skipped.
 * @param path of the field, for faults
 * @throws PresolderError REQUEST_INVALID naming the lines at fault
 */
export function readMeasurements(text: string, path: string): MeasurementColumns {
  const lines = text.split(/\r\n|\n|\r/).map((line, index) => ({ line: line.trim(), number: index + 1 }));
  const rows = lines.filter(({ line }) => line !== "" && !line.startsWith("#"));
  const body = rows.filter(({ line }, index) => !(index === 0 && isHeading(line)));
  const faults: InputFault[] = [];
  const columns = { frequenciesHz: [] as number[], values: [] as number[], thirds: [] as number[] };
  for (const { line, number } of body) {
    const row = cells(line);
    const numbers = row.map((cell) => (cell === "" ? Number.NaN : Number(cell)));
    const fault = lineFault(numbers, row);
    if (fault) faults.push({ path: `${path}.line ${number}`, message: fault });
    columns.frequenciesHz.push(numbers[0] ?? Number.NaN);
    columns.values.push(numbers[1] ?? Number.NaN);
    if (numbers[2] !== undefined) columns.thirds.push(numbers[2]);
  }
  if (columns.thirds.length > 0 && columns.thirds.length < body.length)
    faults.push({ path, message: "some lines have a third column and some have not; expected all or none" });
  if (body.length > MAX_FIT_POINTS)
    faults.push({ path, message: `has ${body.length} lines; expected at most ${MAX_FIT_POINTS}` });
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults.slice(0, MAX_FAULTS));
  const { thirds, ...two } = columns;
  return thirds.length > 0 ? columns : two;
}
