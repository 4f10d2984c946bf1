import type { GuardDrawing } from "../guard-drawing.ts";
import type { Point } from "../point.ts";

export type Target =
  | { readonly kind: "lug"; readonly name: string }
  | { readonly kind: "wire"; readonly index: number }
  | { readonly kind: "part"; readonly name: string };

/** CSS pixels within which the nearest lug is meant: a thumb covers 44 across, and a mouse points finer. */
export const THUMB_REACH = 22;
export const MOUSE_REACH = 14;

/** Points along a wire that its distance is taken to. */
const SAMPLES = 24;

/** A place on the screen in the drawing's units. */
export function toDrawing({ element }: GuardDrawing, { x, y }: Point): Point {
  return new DOMPoint(x, y).matrixTransform(element.getScreenCTM()!.inverse());
}

/** The nearest lug within reach of a place on the screen, whatever lies over it. */
export function lugNear(drawing: GuardDrawing, at: Point, reach: number): string | undefined {
  const scale = drawing.element.getScreenCTM()!.a;
  const { x, y } = toDrawing(drawing, at);
  let nearest: string | undefined;
  let least = reach / scale;
  for (const lug of drawing.lugs.values()) {
    const away = Math.hypot(lug.x - x, lug.y - y);
    if (away > least) continue;
    least = away;
    nearest = lug.name;
  }
  return nearest;
}

function distanceTo(path: SVGPathElement, { x, y }: Point): number {
  const length = path.getTotalLength();
  const distances = Array.from({ length: SAMPLES + 1 }, (_, index) => {
    const at = path.getPointAtLength((index / SAMPLES) * length);
    return Math.hypot(at.x - x, at.y - y);
  });
  return Math.min(...distances);
}

/** The wire that runs nearest, of those whose reach covers the place. */
function wireAmong(drawing: GuardDrawing, elements: readonly Element[], at: Point): number {
  const here = toDrawing(drawing, at);
  const [nearest] = elements
    .filter((each): each is SVGPathElement => each.matches("[data-wire]"))
    .map((path) => ({ path, away: distanceTo(path, here) }))
    .sort((a, b) => a.away - b.away);
  return Number(nearest!.path.dataset.wire);
}

/** What somebody means who points there: the nearest lug first, then the wire or part that lies on top. */
export function targetAt(drawing: GuardDrawing, at: Point, reach: number): Target | undefined {
  const lug = lugNear(drawing, at, reach);
  if (lug !== undefined) return { kind: "lug", name: lug };
  const elements = document.elementsFromPoint(at.x, at.y).filter((each) => drawing.element.contains(each));
  for (const each of elements) {
    if (each.matches("[data-wire]")) return { kind: "wire", index: wireAmong(drawing, elements, at) };
    const part = each.closest<SVGElement>("[data-part], [data-caption]")?.dataset;
    if (part) return { kind: "part", name: (part.part ?? part.caption)! };
  }
  return undefined;
}
