import type { Drawn, TemplateDrawing } from "../../bench/room/template/drawing.ts";

/** Millimetres around everything, so that nothing ends at the paper's edge. */
const MARGIN = 8;

export interface SheetPoint {
  readonly x: number;
  readonly y: number;
}

/** A template on paper: millimetres from its upper left corner. */
export interface TemplateSheet {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly lines: readonly { readonly what: Drawn["what"]; readonly points: readonly SheetPoint[] }[];
  readonly circles: readonly { readonly what: Drawn["what"]; readonly centre: SheetPoint; readonly radius: number }[];
  readonly named: readonly { readonly at: SheetPoint; readonly text: string; readonly words: SheetPoint }[];
  /** Of the bridge line and the centre line. */
  readonly bridge: SheetPoint;
}

/** The figure by which a printer is checked. */
export const BAR_MM = 100;
export const BAR_WORDS = `This bar must measure ${BAR_MM} mm: print at 100 %, not fitted to the page.`;
export const SIDE_WORDS = "Seen from the front: the neck to the right, the treble side down.";

/** About as wide as a letter of the words beside a part, in millimetres. */
const LETTER = 1.8;
/** From a part's middle to its words. */
const BESIDE = 2.5;

/** Where words begin so that they end on the sheet: to the right of a part's middle, or before it. */
function wordsBeside({ x, y }: SheetPoint, text: string, width: number): SheetPoint {
  const long = text.length * LETTER;
  return { x: x + BESIDE + long <= width ? x + BESIDE : Math.max(0, x - BESIDE - long), y: y - 1 };
}

const rounded = (millimetres: number) => Number(millimetres.toFixed(3)) || 0;

export function templateSheet({ title, drawn, named, low, high }: TemplateDrawing): TemplateSheet {
  const onPaper = ([x, y]: readonly [number, number]): SheetPoint => ({
    x: rounded((x - low[0]) * 1000 + MARGIN),
    y: rounded((y - low[1]) * 1000 + MARGIN),
  });
  const width = rounded((high[0] - low[0]) * 1000 + 2 * MARGIN);
  return {
    title,
    width,
    height: rounded((high[1] - low[1]) * 1000 + 2 * MARGIN),
    lines: drawn.flatMap(({ what, shape }) => ("points" in shape ? [{ what, points: shape.points.map(onPaper) }] : [])),
    circles: drawn.flatMap(({ what, shape }) =>
      "centre" in shape ? [{ what, centre: onPaper(shape.centre), radius: rounded(shape.diameter * 500) }] : [],
    ),
    named: named.map(({ at, text }) => ({ at: onPaper(at), text, words: wordsBeside(onPaper(at), text, width) })),
    bridge: onPaper([0, 0]),
  };
}
