import type { Outline } from "./body-kind.ts";
import type { SwitchBody } from "./body-names.ts";
import { inRow, mm, type Spots } from "./spot.ts";

/** The throws of a pole from the bridge end on: the wiper runs against the lever's tip, so that the last comes first. */
function againstTheLever(pole: string, throws: number): string[] {
  return Array.from({ length: throws }, (_, index) => `${pole}${throws - index}`);
}

const FRAME_PITCH = mm(8);
const FRAME_SIDES = mm(12);

/** Each side's common at the other end: a jumper from one to the other crosses the frame. */
function openFrame(throws: number): Spots {
  return new Map([
    ...inRow([...againstTheLever("A", throws), "A0"], FRAME_PITCH, { x: 0, y: -FRAME_SIDES / 2 }),
    ...inRow(["B0", ...againstTheLever("B", throws)], FRAME_PITCH, { x: 0, y: FRAME_SIDES / 2 }),
  ]);
}

const LINE_PITCH = mm(4);
const upwards = (pole: string, throws: number) => Array.from({ length: throws + 1 }, (_, index) => `${pole}${index}`);

function inLine(throws: number, isMirrored: boolean): Spots {
  const [a, b] = [upwards("A", throws), upwards("B", throws)];
  return new Map(inRow([...a, ...(isMirrored ? b.reverse() : b)], LINE_PITCH));
}

const BOARD_PITCH = mm(5);
const BOARD_ROWS = mm(7);
const POLES = ["A", "B", "C", "D"] as const;

/** A row a pole, the commons at either end by turns. */
function board(throws: number): Spots {
  return new Map(
    POLES.flatMap((pole, row) => {
      const ways = againstTheLever(pole, throws);
      const locals = row % 2 === 0 ? [...ways, `${pole}0`] : [`${pole}0`, ...ways];
      return inRow(locals, BOARD_PITCH, { x: 0, y: (row - (POLES.length - 1) / 2) * BOARD_ROWS });
    }),
  );
}

/** @param throws of each pole */
export function leverSpots(body: SwitchBody, throws: number): Spots {
  if (body === "board") return board(throws);
  return body === "open-frame" ? openFrame(throws) : inLine(throws, body === "in-line-mirrored");
}

export function leverOutline(body: SwitchBody): Outline {
  if (body === "board") return { form: "box", width: mm(38), height: mm(26) };
  return { form: "box", width: mm(42), height: body === "open-frame" ? mm(8) : mm(10) };
}
