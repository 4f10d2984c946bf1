import type { Point } from "../point.ts";

const CLOSEST = 4;
const STEP = 1.4;
/** As `.drawing` in the style sheet: narrower than this, the drawing is wider than its frame. */
const LEAST_WIDTH = 780;
/** Of a wheel's travel, so that a notch is about a step. */
const WHEEL_PIXELS = 300;

export interface Zoom {
  closer(): void;
  farther(): void;
  whole(): void;
}

const middleOf = (a: Point, b: Point): Point => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
const apart = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

/** Sizes the drawing within its scrolling frame: by steps, by a pinch, or by the wheel with Ctrl held. */
export function createZoom(frame: HTMLElement): Zoom {
  let zoom = 1;
  const wholeZoom = () => Math.min(1, frame.clientWidth / LEAST_WIDTH);
  const middle = (): Point => {
    const { left, top, width, height } = frame.getBoundingClientRect();
    return { x: left + width / 2, y: top + height / 2 };
  };
  /** What was under the place on the screen stays under it. */
  const setZoom = (wanted: number, { x, y }: Point) => {
    const drawing = frame.querySelector("svg");
    if (!drawing) return;
    const before = drawing.getBoundingClientRect();
    zoom = Math.max(wholeZoom(), Math.min(CLOSEST, wanted));
    frame.style.setProperty("--zoom", String(zoom));
    frame.classList.toggle("zoomed", zoom > 1);
    const moved = () => {
      const after = drawing.getBoundingClientRect();
      return {
        x: after.left + ((x - before.left) / before.width) * after.width - x,
        y: after.top + ((y - before.top) / before.height) * after.height - y,
      };
    };
    const by = moved();
    frame.scrollBy(by.x, by.y);
    // A frame that grew with its drawing has nothing to scroll: the page has.
    scrollBy(0, moved().y);
  };
  frame.addEventListener(
    "wheel",
    (event) => {
      if (!event.ctrlKey) return;
      event.preventDefault();
      setZoom(zoom * STEP ** (-event.deltaY / WHEEL_PIXELS), { x: event.clientX, y: event.clientY });
    },
    { passive: false },
  );
  listenForPinch(frame, (factor, at) => setZoom(zoom * factor, at));
  return {
    closer: () => setZoom(zoom * STEP, middle()),
    farther: () => setZoom(zoom / STEP, middle()),
    whole: () => setZoom(wholeZoom(), middle()),
  };
}

function listenForPinch(frame: HTMLElement, zoomBy: (factor: number, at: Point) => void): void {
  let before: number | undefined;
  const fingers = ({ touches }: TouchEvent): [Point, Point] | undefined => {
    const [a, b] = [...touches].map(({ clientX, clientY }) => ({ x: clientX, y: clientY }));
    return a && b ? [a, b] : undefined;
  };
  const pinch = (event: TouchEvent) => {
    const two = fingers(event);
    if (!two) {
      before = undefined;
      return;
    }
    if (event.cancelable) event.preventDefault();
    const now = apart(...two);
    if (before) zoomBy(now / before, middleOf(...two));
    before = now;
  };
  for (const type of ["touchstart", "touchmove", "touchend", "touchcancel"] as const)
    frame.addEventListener(type, pinch, { passive: false });
}
