import { parseQuantity, QuantityError } from "../quantity.ts";

/** A track as somebody measured it: [rotation, fraction] points from 0, 0 to 1, 1. */
export type TaperTable = [number, number][];

/** Of the track: what may be left at its counter-clockwise end. */
const MOST_AT_THE_END = 0.02;

/** Turn and reading with a space, a tab or a semicolon between them; a comma alone is one where nothing else is. */
const APART = [/^([^\s;]+?),?[\s;]+(.+)$/, /^([^,]+),([^,]+)$/];

function readingIn(text: string): number {
  try {
    return parseQuantity(text.replace(/\s*%$/, ""), "resistance").value;
  } catch (error) {
    if (error instanceof QuantityError) return Number.NaN;
    throw error;
  }
}

function numbersIn(line: string, index: number): [number, number] {
  const [, turn = "", read = ""] = APART.map((apart) => apart.exec(line)).find((found) => found !== null) ?? [];
  const numbers: [number, number] = [Number(turn.replace(/[°%]$/, "")), readingIn(read)];
  if (turn !== "" && numbers.every(Number.isFinite)) return numbers;
  const comma = /\d,\d/.test(turn) || /\d,\d/.test(read) ? " with a decimal point" : "";
  throw new Error(
    `line ${index + 1} is "${line.slice(0, 40)}"; expected a turn and what is read there, two numbers${comma}: 5, 16 or 5, 38k`,
  );
}

/**
 * Lines of a turn and what a meter read from lug 1 to the wiper there. Turns count from 0 in any unit (dial, degrees, percent), readings in ohms as a meter shows them ("4.7k"),
 * or percent: the last line is the whole of both.
 * @throws Error that names the line at fault and what was expected
 */
export function readTaperTable(text: string): TaperTable {
  const lines = text
    .split("\n")
    .map((line) => line.trim())
    .filter(Boolean);
  if (lines.length < 2)
    throw new Error("expected at least two lines: the first at one end of the turn, the last at the other");
  const points = lines.map(numbersIn);
  const [[first, left], [whole, most]] = [points[0]!, points.at(-1)!];
  if (first !== 0) throw new Error(`the first line is at ${first}; expected the counter-clockwise end, 0`);
  if (!(most > 0) || left < 0 || left > MOST_AT_THE_END * most)
    throw new Error(
      `reads ${left} at the first line and ${most} at the last; expected next to nothing, then the whole track`,
    );
  for (const [index, [turn, read]] of points.entries()) {
    const before = points[index - 1];
    if (before && !(turn > before[0] && read >= before[1]))
      throw new Error(
        `line ${index + 1} does not go on from the one before; expected a further turn and no smaller reading`,
      );
  }
  return points.map(([turn, read], index) => [turn / whole, index === 0 ? 0 : read / most]);
}
