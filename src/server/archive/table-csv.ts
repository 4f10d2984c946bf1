import type { TableRowAnswer } from "../../contract/table.ts";
import { csvCell, csvTable } from "../../csv.ts";

const COLUMNS: readonly (readonly [heading: string, digits: number, of: (row: TableRowAnswer) => number | null])[] = [
  ["peak (Hz)", 1, ({ peak }) => peak?.frequency ?? null],
  ["peak (dB above 200 Hz)", 2, ({ peak }) => peak?.level ?? null],
  ["cutoff (Hz)", 1, ({ cutoff }) => cutoff],
  ["level at 200 Hz (dB)", 2, ({ level }) => level],
  ["loudness (LU)", 2, ({ loudness }) => loudness],
  ["hum (dB)", 2, ({ hum }) => hum],
];

/** One line a setting; what a setting does not have stays empty. */
export function tableCsv(rows: readonly TableRowAnswer[]): string {
  const controls = Object.keys(rows[0]?.settings ?? {});
  return csvTable(
    ["setting", ...controls, ...COLUMNS.map(([heading]) => heading)],
    rows.map((row) => [
      csvCell(row.label),
      ...controls.map((name) => csvCell(String(row.settings[name] ?? ""))),
      ...COLUMNS.map(([, digits, of]) => of(row)?.toFixed(digits) ?? ""),
    ]),
  );
}
