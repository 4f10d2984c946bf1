import type { Build } from "../../../build-file/schema.ts";
import { millimetresText } from "../../../lengths.ts";
import { POLE_SPACINGS, WIDE_SPREAD } from "../figures.ts";
import { type Point, seatedPoint } from "../geometry/outline.ts";
import type { Measures } from "../measures.ts";
import type { PlacedPart } from "../placed-parts.ts";
import { stringsAt } from "../strings-at.ts";
import { type Clearance, measured, notSaid } from "./clearance.ts";

const RADIANS = Math.PI / 180;

function nearestSold(coils: number, spread: number): string {
  const { millimetres, source } = coils === 2 ? POLE_SPACINGS.humbucker : POLE_SPACINGS.single;
  const sold: readonly number[] = millimetres;
  const nearest = sold.reduce((best, each) =>
    Math.abs(each - spread * 1000) < Math.abs(best - spread * 1000) ? each : best,
  );
  const wide =
    coils === 2 && spread * 1000 > WIDE_SPREAD.millimetres ? "; strings this wide ask for the wide spacing" : "";
  return `The nearest that is sold is ${nearest} mm (${source})${wide}.`;
}

/** How far the outer strings pass beside their poles: the strings' spread there against the poles', a slant taken off. */
export function poleClearances(build: Build, placed: PlacedPart, measures: Measures): Clearance[] {
  const { name, part, seat } = placed;
  if (part.kind !== "pickup") return [];
  const open = { part: name, against: "strings", kind: "pole spacing" } as const;
  const poles = placed.measures.poleSpacing;
  if (poles === undefined)
    return [notSaid({ ...open, message: "pole spacing not said: measure from the first pole's middle to the last's" })];
  const spread = seat && stringsAt(build, measures, seat.x);
  if (seat === undefined || spread === undefined || !measures.strings)
    return [notSaid({ ...open, message: "string spacing not said: measure it at the nut and at the bridge" })];
  const across = poles * Math.cos(seat.turn * RADIANS);
  const beside = (spread - across) / 2;
  const side = beside < 0 ? "inside" : "outside";
  const corner: Point = [0, poles / 2];
  const pole = seatedPoint(corner, seat);
  return [
    measured({
      ...open,
      clearance: measures.strings.beside - Math.abs(beside),
      where: [pole, [pole[0], spread / 2]],
      tolerance: measures.tolerance,
      message: `There the strings spread over ${millimetresText(spread)} and the poles over ${millimetresText(across)}: the outer strings pass ${millimetresText(Math.abs(beside))} ${side} their poles, where ${millimetresText(measures.strings.beside)} are let pass. ${nearestSold(Object.keys(part.coils).length, spread)}`,
    }),
  ];
}
