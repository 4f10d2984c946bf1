import { type HeardRow, sizeOf } from "../comparison-row.ts";
import { inDecibels, isNothing } from "../verdict.ts";
import { byDifference, type Places } from "./places.ts";
import { shortVerdict } from "./row-words.ts";

/** More are not read in a sentence; all are in the rows. */
const MOST_LISTED = 3;

const figuresOf = ({ row, silent }: HeardRow) => shortVerdict(row.weighed, row.audible, silent);

/** Rows that differ by the same in one position, as where a tone control has no part in it, are told as one. */
function alike(rows: readonly HeardRow[], places: Places): HeardRow[][] {
  const groups: HeardRow[][] = [];
  for (const row of rows) {
    const own = groups.find(([first]) => figuresOf(first!) === figuresOf(row) && places.isOnePosition(first!, row));
    if (own) own.push(row);
    else groups.push([row]);
  }
  return groups;
}

function groupWords(rows: readonly HeardRow[], places: Places): string {
  const others = rows.length - 1;
  const more = others === 0 ? "" : `, and ${others} more ${others === 1 ? "setting" : "settings"} there`;
  return `${places.rowWords(rows[0]!)}${more}: ${figuresOf(rows[0]!)}`;
}

/** The settings that differ most, the most different first; nothing of one setting, which the answer tells. */
export function listingWords(heard: readonly HeardRow[], places: Places): string {
  const audible = byDifference(heard).filter(({ row }) => row.audible !== "none");
  if (heard.length < 2 || audible.length === 0) return "";
  const groups = alike(audible, places).slice(0, MOST_LISTED);
  const listed = new Set(groups.flat());
  const rest = heard.filter((row) => !listed.has(row));
  const most = rest.reduce((size, row) => Math.max(size, sizeOf(row)), 0);
  const told = groups.map((rows) => groupWords(rows, places));
  const others =
    rest.length === 0
      ? ""
      : `; the other ${rest.length === 1 ? "setting" : `${rest.length} settings`}: ${isNothing(most) ? "less than 0.01 dB" : `at most ${inDecibels(most)}`}`;
  return ` Most different first: ${told.join("; ")}${others}.`;
}

export function countWords(heard: readonly HeardRow[]): string {
  if (heard.length < 2) return "";
  const audible = heard.filter(({ row }) => row.audible !== "none").length;
  return audible === 0
    ? ` No difference can be heard in any of ${heard.length} settings.`
    : ` A difference can be heard in ${audible} of ${heard.length} settings.`;
}

/** Of the row that differs most; nothing where a side is silent: two guards of one list are silent together. */
export function toleranceWords(heard: readonly HeardRow[]): string {
  const [most] = byDifference(heard);
  if (!most?.row.tolerance || most.silent.includes(true)) return "";
  const { high, exceeded } = most.row.tolerance;
  const spread = `two guards built from the same list differ by up to ${inDecibels(high)} (19 of 20 pairs)`;
  return exceeded ? ` It is more than tolerance: ${spread}.` : ` Tolerance alone does as much: ${spread}.`;
}
