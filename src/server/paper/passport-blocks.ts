import type { Passport } from "../../bench/passport/passport.ts";
import { millimetresText } from "../../lengths.ts";
import type { Block } from "./blocks.ts";

const FITS = { true: "fits", false: "does not fit" } as const;

const withLines = (blocks: readonly Block[]) => blocks.filter(({ lines }) => lines.length > 0);

/** What the guard is made of. */
export function partBlocks({ parts, staysOver }: Passport): Block[] {
  return withLines([
    { heading: "Parts", lines: parts.map(({ name, what }) => [name, what]) },
    { heading: "Stays over in the drawer", lines: staysOver.map(({ what, quantity }) => [`${quantity} ×`, what]) },
  ]);
}

/** What it does, and what was measured on it. */
export function findingBlocks({ positions, readings, heights, notes }: Passport): Block[] {
  return withLines([
    { heading: "What each position sounds", lines: positions.map(({ position, sounds }) => [position, sounds]) },
    {
      heading: "Readings, tip to sleeve, dials at 10",
      lines: readings.map(({ where, should, shows, noted, fits }) => [
        where,
        `${noted ?? "_______"}   (${[should, shows].filter(Boolean).join("; ")}${fits === null ? "" : `: ${FITS[`${fits}`]}`})`,
      ]),
    },
    {
      heading: "Heights, strings pressed at the last fret",
      lines: heights.map(({ name, bass, treble }) => [
        name,
        `bass ${millimetresText(bass)}, treble ${millimetresText(treble)}`,
      ]),
    },
    { heading: "Notes", lines: notes === null ? [] : [["", notes]] },
  ]);
}
