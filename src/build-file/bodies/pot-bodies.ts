import type { Pot } from "../schema.ts";
import { switchTable } from "../switch-types.ts";
import type { Outline } from "./body-kind.ts";
import type { PotBody, ShaftBody } from "./body-names.ts";
import { blockSpots } from "./plain-switch-bodies.ts";
import { poleColumns, poleRowsOf } from "./small-switch-bodies.ts";
import { inRow, mm, type Spot, type Spots } from "./spot.ts";

interface PotSize {
  readonly radius: number;
  readonly pitch: number;
  /** From the shaft to the lugs' eyes. */
  readonly reach: number;
}

const FULL: PotSize = { radius: mm(12), pitch: mm(7), reach: mm(16) };
const MINI: PotSize = { radius: mm(8.5), pitch: mm(5), reach: mm(12) };
/** The second track's lugs stand farther out, above the first's. */
const SECOND_TRACK = mm(6);

const sizeOf = (body: PotBody) => (body === "mini" || body === "stacked-mini" ? MINI : FULL);

/** Lug 1 is the counter-clockwise end as the knob is turned: from the back, lugs down, they read 3, 2, 1 from left to right. */
const TRACK = ["3", "2", "1"];

const SHAFT_LUGS = mm(5);
const SHAFT_MIDDLE: Spot = { x: 0, y: mm(1.5) };

/** A push-pull's lugs point back at whoever solders, behind the case; those of a lone pole stand in its middle. */
function shaftSpots(pot: Pot, body: ShaftBody): [string, Spot][] {
  const { lugs } = switchTable(pot.drives!);
  const poles = [...new Set(lugs.map((lug) => lug[0]!))];
  const isThrow = lugs.length === poles.length * 3 && lugs.every((lug) => /^[A-H][012]$/.test(lug));
  const spots = !isThrow
    ? [...blockSpots(lugs)]
    : body === "rows"
      ? poleRowsOf(poles, SHAFT_LUGS, SHAFT_LUGS, SHAFT_MIDDLE)
      : poleColumns(poles, SHAFT_LUGS, SHAFT_LUGS, SHAFT_MIDDLE);
  return spots.map(([lug, spot]) => [`s.${lug}`, spot]);
}

export function potSpots(pot: Pot, body: PotBody, shaft: ShaftBody): Spots {
  const { radius, pitch, reach } = sizeOf(body);
  const switched = pot.drives ? shaftSpots(pot, shaft) : [];
  const highest = Math.max(0, ...switched.map(([, spot]) => spot.y + mm(5)));
  return new Map([
    ...inRow(TRACK, pitch, { x: 0, y: -reach }),
    ...(pot.gangs ? inRow(["b3", "b2", "b1"], pitch, { x: 0, y: -reach - SECOND_TRACK }) : []),
    ["case", { x: 0, y: Math.max(radius * 0.6, highest) }],
    ...switched,
  ]);
}

export function potOutline(body: PotBody): Outline {
  return { form: "round", radius: sizeOf(body).radius };
}
