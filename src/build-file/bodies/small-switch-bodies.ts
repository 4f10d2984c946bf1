import type { Outline } from "./body-kind.ts";
import type { SwitchBody } from "./body-names.ts";
import { inColumn, inRow, mm, type Spot, type Spots } from "./spot.ts";

/** A pole's common stands between its throws. */
const poleInLine = (pole: string) => [`${pole}1`, `${pole}0`, `${pole}2`];

const middles = (count: number, pitch: number) =>
  Array.from({ length: count }, (_, index) => (index - (count - 1) / 2) * pitch);

/** Poles beside each other, each a column of three. @param about its middle */
export function poleColumns(poles: readonly string[], across: number, along: number, about: Spot = { x: 0, y: 0 }) {
  return middles(poles.length, across).flatMap((x, index) =>
    inColumn(poleInLine(poles[index]!), along, { x: about.x + x, y: about.y }),
  );
}

/** Poles above each other, each a row of three. */
export function poleRowsOf(poles: readonly string[], across: number, along: number, about: Spot = { x: 0, y: 0 }) {
  return middles(poles.length, across).flatMap((y, index) =>
    inRow(poleInLine(poles[index]!), along, { x: about.x, y: about.y + y }),
  );
}

const TOGGLE_PITCH = mm(4.7);
const SLIDE_PITCH = mm(5);

/** @param poles their letters */
export function smallSwitchSpots(body: SwitchBody, poles: readonly string[]): Spots {
  return new Map(
    body === "slide" ? poleRowsOf(poles, SLIDE_PITCH, SLIDE_PITCH) : poleColumns(poles, TOGGLE_PITCH, TOGGLE_PITCH),
  );
}

export function smallSwitchOutline(body: SwitchBody, poles: number): Outline {
  if (body === "slide") return { form: "box", width: mm(24), height: mm(7 + 5 * (poles - 1)) };
  return { form: "box", width: mm(7.5 + 5 * (poles - 1)), height: mm(13) };
}

/** Of the three-position toggle: the two ways with the common between them, and the metal that is to be grounded. */
export function toggleSpots(body: SwitchBody): Spots {
  const ways = ["A1", "A0", "A2"];
  return body === "box"
    ? new Map([...inRow(ways, mm(5), { x: 0, y: mm(-1) }), ["frame", { x: 0, y: mm(9) }]])
    : new Map([...inRow(ways, mm(6.5), { x: 0, y: mm(-7) }), ["frame", { x: mm(9), y: mm(5) }]]);
}

export function toggleOutline(body: SwitchBody): Outline {
  return { form: "box", width: body === "box" ? mm(20) : mm(26), height: body === "box" ? mm(12) : mm(14) };
}
