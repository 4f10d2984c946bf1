import { capitalised } from "../../english.ts";
import { millimetresText } from "../../lengths.ts";
import { type Side, TURN_STEP } from "./screws.ts";

const FRACTIONS = [
  "",
  "an eighth of a turn",
  "a quarter turn",
  "three eighths of a turn",
  "half a turn",
  "five eighths of a turn",
  "three quarters of a turn",
  "seven eighths of a turn",
];

/** "a quarter turn", "one turn", "2 turns and three eighths of a turn". @param turns in whole eighths, sign aside */
export function turnWords(turns: number): string {
  const eighths = Math.round(Math.abs(turns) / TURN_STEP);
  const whole = Math.floor(eighths / 8);
  const rest = FRACTIONS[eighths % 8]!;
  const wholeWords = whole === 1 ? "one turn" : `${whole} turns`;
  if (whole === 0) return rest || "no turn";
  return rest === "" ? wholeWords : `${wholeWords} and ${rest}`;
}

/** Decibels with one decimal, without a sign. */
export function decibelWords(db: number): string {
  return `${Math.abs(db).toFixed(1)} dB`;
}

export type Direction = "down" | "up" | "stays";

export interface ScrewMove {
  readonly side: Side;
  readonly direction: Direction;
  /** In whole eighths, more is lower; null where the pitch is not known. */
  readonly turns: number | null;
  readonly travelMetres: number;
  readonly clockwise: boolean;
}

/** "Bass screw: a quarter turn down, counter-clockwise." */
export function moveWords({ side, direction, turns, travelMetres, clockwise }: ScrewMove): string {
  const screw = `${capitalised(side)} screw`;
  if (direction === "stays") return `${screw}: stays as it is.`;
  const way = clockwise ? "clockwise" : "counter-clockwise";
  if (turns !== null) return `${screw}: ${turnWords(turns)} ${direction}, ${way}.`;
  const length = millimetresText(Math.abs(travelMetres));
  return `${screw}: ${length} ${direction}, ${way}. Count ten turns of it, measure how far that side of the pickup travels and divide by ten: with that pitch the turns can be told.`;
}
