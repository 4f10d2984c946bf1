import { type Direction, type Dot, dotBeside, dotTowards } from "./nearest.ts";

/** From one dot to another; undefined where there is none that way. */
export type Move = (dots: readonly Dot[], from: number) => number | undefined;

const towards =
  (direction: Direction): Move =>
  (dots, from) =>
    dotTowards(dots, from, direction);

/** By key: arrows to what lies there, Page Up and Page Down through all from left to right. */
export const MOVES: Readonly<Record<string, Move>> = {
  ArrowLeft: towards("left"),
  ArrowRight: towards("right"),
  ArrowUp: towards("up"),
  ArrowDown: towards("down"),
  PageUp: (dots, from) => dotBeside(dots, from, -1),
  PageDown: (dots, from) => dotBeside(dots, from, 1),
};
