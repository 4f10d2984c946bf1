import type { Point } from "../../bench/room/geometry/outline.ts";
import { parseQuantity, QuantityError } from "../../build-file/quantity.ts";
import { MAX_OUTLINE_POINTS, MAX_REACH_METRES } from "../../limits.ts";

/** Text that cannot be what its field asks for; the message says what was expected. */
export class Unreadable extends Error {}

const NUMBER = /^[+-]?(\d+([.,]\d*)?|[.,]\d+)$/;

/** Metres: a bare number is millimetres, anything else says its unit. @throws Unreadable */
export function metresFrom(text: string): number {
  const metres = NUMBER.test(text) ? Number(text.replace(",", ".")) / 1000 : metresWithUnit(text);
  if (Math.abs(metres) <= MAX_REACH_METRES) return metres;
  throw new Unreadable(`"${text}" is more than ${MAX_REACH_METRES * 1000} mm`);
}

function metresWithUnit(text: string): number {
  try {
    return parseQuantity(text, "length").value;
  } catch (error) {
    if (error instanceof QuantityError) throw new Unreadable(`"${text}": expected millimetres, such as 38 or 38.5`);
    throw error;
  }
}

/** A length that is more than nothing. @throws Unreadable */
export function sizeFrom(text: string): number {
  const metres = metresFrom(text);
  if (metres > 0) return metres;
  throw new Unreadable(`"${text}": expected more than 0 mm`);
}

/** By how much something may be off. @throws Unreadable */
export function errorFrom(text: string): number {
  const metres = metresFrom(text);
  if (metres >= 0) return metres;
  throw new Unreadable(`"${text}": expected 0 mm or more`);
}

/** "50 x 16": along the strings and across them. @throws Unreadable */
export function sizesFrom(text: string): readonly [number, number] {
  const [along, across, ...more] = text.split(/\s*[x×*]\s*/i);
  if (along === undefined || across === undefined || more.length > 0)
    throw new Unreadable(`"${text}": expected two lengths such as 50 x 16, along the strings and across them`);
  return [sizeFrom(along), sizeFrom(across)];
}

function pointFrom(line: string, number: number): Point {
  const [x, y, ...more] = line.split(/[,;\s]+/);
  if (x === undefined || y === undefined || more.length > 0)
    throw new Unreadable(`line ${number}, "${line}": expected x, y in millimetres`);
  return [metresFrom(x), metresFrom(y)];
}

/** A point a line. @throws Unreadable */
export function pointsFrom(text: string): Point[] {
  const lines = text
    .split("\n")
    .map((line) => line.trim())
    .filter(Boolean);
  if (lines.length > MAX_OUTLINE_POINTS)
    throw new Unreadable(`has ${lines.length} points; expected at most ${MAX_OUTLINE_POINTS}`);
  return lines.map((line, index) => pointFrom(line, index + 1));
}

/** A closed line. @throws Unreadable */
export function lineFrom(text: string): Point[] {
  const points = pointsFrom(text);
  if (points.length >= 3) return points;
  throw new Unreadable(`has ${points.length === 1 ? "one point" : `${points.length} points`}; expected at least three`);
}

/** Points as they are typed, to a tenth of a millimetre. */
export const pointsText = (points: readonly Point[]): string =>
  points.map((point) => point.map((metres) => Number((metres * 1000).toFixed(1))).join(", ")).join("\n");
