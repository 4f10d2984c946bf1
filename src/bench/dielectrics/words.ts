import { showQuantity } from "../../build-file/show-quantity.ts";
import { AUDIBILITIES, AUDIBILITY_WORDS, inDecibels, inHertz } from "../../choice/compare/verdict.ts";
import { listed } from "../../english.ts";
import type { CapDifference } from "./cap-difference.ts";
import type { CapTold, DielectricRow } from "./told.ts";

type Which = "measured" | "marked" | "changed";

const size = (row: DielectricRow, which: Which) => Math.abs(row[which].difference);
const isHeard = ({ audible }: CapDifference) => audible !== "none";

function worstOf(rows: readonly DielectricRow[], which: Which): DielectricRow {
  return rows.reduce((most, row) => (size(row, which) > size(most, which) ? row : most));
}

function figure({ difference, frequency }: CapDifference): string {
  return Math.abs(difference) < 0.005 ? "less than 0.01 dB" : `${inDecibels(difference)} at ${inHertz(frequency)}`;
}

const percent = (fraction: number) => Math.round(Math.abs(fraction) * 100);

/** "±10 %", "−20/+80 %". */
function range([low, high]: readonly [number, number]): string {
  return low === -high ? `±${percent(high)} %` : `−${percent(low)}/+${percent(high)} %`;
}

const names = (rows: readonly DielectricRow[]) => listed([...new Set(rows.map(({ title }) => title))]);

function unheardWords(rows: readonly DielectricRow[], settings: number): string {
  const one = rows.length === 1 ? "" : ", nor from each other,";
  const which = settings === 1 ? "this setting" : `any of ${settings} settings`;
  return `${names(rows)} cannot be told from a cap without loss${one} in ${which}: at most ${figure(worstOf(rows, "measured").measured)}.`;
}

function measuredWords({ rows, capacitance, settings }: Omit<CapTold, "says">): string {
  const [heard, unheard] = [true, false].map((which) => rows.filter(({ measured }) => isHeard(measured) === which));
  const told = [
    ...(unheard!.length > 0 ? [unheardWords(unheard!, settings)] : []),
    ...(heard!.length > 0 ? [heardWords(heard!)] : []),
  ];
  return `At the same measured ${showQuantity(capacitance, "capacitance")} ${told.join(" With ")}`;
}

function heardWords(rows: readonly DielectricRow[]): string {
  const { measured } = worstOf(rows, "measured");
  return `${names(rows)} it comes to ${figure(measured)}, ${AUDIBILITY_WORDS[measured.audible]}, in ${measured.label}.`;
}

function peakWords({ peakShift }: CapDifference): string {
  if (peakShift === null || Math.abs(peakShift) < 1) return "";
  return `, with its peak ${inHertz(peakShift)} ${peakShift > 0 ? "higher" : "lower"}`;
}

function markedOf({ title, marked }: DielectricRow): string {
  return `${title} (${range(marked.within)}) differs by up to ${figure(marked)}${peakWords(marked)}: ${AUDIBILITY_WORDS[marked.audible]}`;
}

function markedWords(rows: readonly DielectricRow[]): string {
  const usual = rows.find(({ dielectric }) => dielectric === "film-pet")!;
  const worst = worstOf(rows, "marked");
  const both = worst === usual ? [usual] : [usual, worst];
  return `With the same value marked on them and as they are sold, ${both.map(markedOf).join("; ")}.`;
}

function changedWords(rows: readonly DielectricRow[]): string {
  const { title, changed } = worstOf(rows, "changed");
  if (!isHeard(changed)) return "What temperature and eleven years may do to any of them is not heard.";
  return `Between 10 and 35 °C and in eleven years ${title} may by its code change by ${range(changed.within)}, and differ by ${figure(changed)}: ${AUDIBILITY_WORDS[changed.audible]}.`;
}

/** What one cap's dielectric comes to: at the same measured value, as marked, and with temperature and age. */
export function capWords(told: Omit<CapTold, "says">): string {
  return [measuredWords(told), markedWords(told.rows), changedWords(told.rows)].join(" ");
}

function madeWords(rows: readonly DielectricRow[]): string {
  const heard = rows.filter(({ measured }) => isHeard(measured));
  const unheard = rows.filter(({ title }) => heard.every((row) => row.title !== title));
  const most = (among: readonly DielectricRow[]) => inDecibels(worstOf(among, "measured").measured.difference);
  if (heard.length === 0)
    return `No: at the same measured value nobody hears what the cap is made of (at most ${most(rows)})`;
  const { audible } = worstOf(heard, "measured").measured;
  const first = AUDIBILITIES.indexOf(audible) <= AUDIBILITIES.indexOf("edge") ? "Hardly" : "Yes";
  const others = unheard.length === 0 ? "" : `nobody hears ${names(unheard)} apart (at most ${most(unheard)}), and `;
  const come = new Set(heard.map(({ title }) => title)).size === 1 ? "comes" : "come";
  return `${first}: at the same measured value ${others}${names(heard)} ${come} to ${most(heard)}, ${AUDIBILITY_WORDS[audible]}`;
}

/** The short answer, for all caps that were asked about. */
export function answerWords(caps: readonly CapTold[]): string {
  const rows = caps.flatMap((cap) => cap.rows);
  const { marked } = worstOf(rows, "marked");
  const rest = isHeard(marked)
    ? "what is heard is how far a cap is from the value marked on it"
    : "here even the tolerance is not heard";
  return `${madeWords(rows)}; ${rest}.`;
}
