/** A text cell (RFC 4180). One that a spreadsheet would take for a formula is put behind an apostrophe. */
export function csvCell(text: string): string {
  const harmless = /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\n\r]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}

/** A heading and rows of finished cells; every line has its end (RFC 4180, 2). */
export function csvTable(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  return [headings.map(csvCell), ...rows].map((cells) => `${cells.join(",")}\r\n`).join("");
}

export interface NamedLevels {
  readonly name: string;
  /** One for each frequency, dB. */
  readonly magnitude: Float64Array;
}

/** Curves as a table: frequencies down, curves across. */
export function curvesCsv(frequenciesHz: Float64Array, curves: readonly NamedLevels[]): string {
  const headings = ["frequency (Hz)", ...curves.map(({ name }) => `${name} (dB)`)];
  const rows = Array.from(frequenciesHz, (frequency, index) => [
    frequency.toFixed(3),
    ...curves.map(({ magnitude }) => magnitude[index]!.toFixed(4)),
  ]);
  return csvTable(headings, rows);
}
