import { WIDTH } from "./dots.ts";

/** A finger's reach and a mouse's, in pixels of the screen. */
const REACH = { touch: 24, mouse: 12 };
const HOVER_MS = 120;

interface Pointed {
  /** The dot within reach of a place of the picture, if any. */
  at(place: { readonly x: number; readonly y: number }, reach: number): number | undefined;
  readonly chosen: number | undefined;
  /** A mouse passes over a dot, or over none. */
  over(dot: number | undefined): void;
  /** @param byHover where a mouse only passes over it */
  choose(dot: number, byHover: boolean): void;
}

/** Tells which dot of a picture a mouse or a finger points at. */
export function listenToPointer(svg: SVGElement, pointed: Pointed): void {
  let hover: ReturnType<typeof setTimeout> | undefined;
  const at = (event: MouseEvent, reach: number) => {
    const { left, top, width } = svg.getBoundingClientRect();
    const unit = WIDTH / width;
    return pointed.at({ x: (event.clientX - left) * unit, y: (event.clientY - top) * unit }, reach * unit);
  };
  svg.addEventListener("pointermove", (event) => {
    if (event.pointerType !== "mouse") return;
    clearTimeout(hover);
    const dot = at(event, REACH.mouse);
    pointed.over(dot);
    if (dot === undefined || dot === pointed.chosen) return;
    hover = setTimeout(() => pointed.choose(dot, true), HOVER_MS);
  });
  svg.addEventListener("pointerleave", () => clearTimeout(hover));
  svg.addEventListener("click", (event) => {
    const isMouse = (event as PointerEvent).pointerType === "mouse";
    const dot = at(event, isMouse ? REACH.mouse : REACH.touch);
    clearTimeout(hover);
    if (dot !== undefined) pointed.choose(dot, false);
  });
}
