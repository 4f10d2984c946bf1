import { A4 } from "./pdf.ts";

/** Millimetres that printers leave white at each edge. */
const EDGE = 10;
/** Below the window: the bar and its words. */
const FOOT = 18;
/** Millimetres that a page shares with the next, to lay one over the other. */
const OVERLAP = 10;

interface Size {
  readonly width: number;
  readonly height: number;
}

/** One page: the part of the drawing that its window shows, in the drawing's millimetres. */
export interface Tile {
  readonly row: number;
  readonly column: number;
  readonly x: number;
  readonly y: number;
}

export interface Tiling {
  readonly page: Size;
  /** Where on the page the drawing shows. */
  readonly window: Size & { readonly x: number; readonly y: number };
  readonly rows: number;
  readonly columns: number;
  readonly tiles: readonly Tile[];
  /** Crosses that two neighbouring pages both show, in the drawing's millimetres. */
  readonly crosses: readonly { readonly x: number; readonly y: number }[];
}

const countFor = (length: number, window: number) => Math.max(1, Math.ceil((length - OVERLAP) / (window - OVERLAP)));
const upTo = (count: number) => Array.from({ length: count }, (_, index) => index);

/** Where each seam's middle lies, and two places along each page's own stretch. */
function marksAlong(count: number, window: number) {
  const step = window - OVERLAP;
  return {
    seams: upTo(count - 1).map((index) => (index + 1) * step + OVERLAP / 2),
    along: upTo(count).flatMap((index) => [0.25, 0.75].map((part) => index * step + part * window)),
  };
}

function tilingOn(page: Size, drawing: Size): Tiling {
  const window = { x: EDGE, y: EDGE, width: page.width - 2 * EDGE, height: page.height - 2 * EDGE - FOOT };
  const [columns, rows] = [countFor(drawing.width, window.width), countFor(drawing.height, window.height)];
  const [across, down] = [marksAlong(columns, window.width), marksAlong(rows, window.height)];
  return {
    page,
    window,
    rows,
    columns,
    tiles: upTo(rows).flatMap((row) =>
      upTo(columns).map((column) => ({
        row,
        column,
        x: column * (window.width - OVERLAP),
        y: row * (window.height - OVERLAP),
      })),
    ),
    crosses: [
      ...across.seams.flatMap((x) => down.along.map((y) => ({ x, y }))),
      ...down.seams.flatMap((y) => across.along.map((x) => ({ x, y }))),
    ],
  };
}

/** A drawing on as few pages of A4 as it takes, upright or lying. */
export function tilingFor(drawing: Size): Tiling {
  const upright = tilingOn(A4, drawing);
  const lying = tilingOn({ width: A4.height, height: A4.width }, drawing);
  return lying.tiles.length < upright.tiles.length ? lying : upright;
}
