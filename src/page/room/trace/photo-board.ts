import type { Pixel } from "../../../bench/room/photo-frame.ts";
import { replaceContent, s } from "../../dom/element.ts";
import { MARKS } from "./trace.ts";

/** What a person does on the photograph. */
export interface BoardActions {
  add(place: Pixel): void;
  move(index: number, place: Pixel): void;
  remove(index: number): void;
}

export interface PhotoBoard {
  readonly element: SVGSVGElement;
  /** Pixels of the photograph in one of the screen's. */
  pixels(): number;
  show(places: readonly Pixel[]): void;
}

const STEPS: Readonly<Record<string, Pixel>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};
const FAR_STEP = 10;
/** Pixels of the screen: what is seen of a place, and what a finger may hit. */
const DOT_RADIUS = 6;
const TOUCH_RADIUS = 13;

const nameOf = (index: number) => (index < MARKS ? `Mark ${index + 1}` : `Point ${index - MARKS + 1}`);

/** A photograph with what is marked on it: places to add by clicking, to drag, and to move or delete by keys. */
export function createPhotoBoard(address: string, width: number, height: number, actions: BoardActions): PhotoBoard {
  const element = s("svg", {
    class: "trace-board",
    viewBox: `0 0 ${width} ${height}`,
    role: "group",
    "aria-label": "The photograph, with two marks and the cavity's line",
  });
  const photo = s("image", { href: address, width, height });
  const line = s("polygon", { class: "trace-line" });
  const scale = s("line", { class: "trace-scale" });
  const dots = s("g", {});
  element.append(photo, line, scale, dots);
  let shown: readonly Pixel[] = [];
  let dragged: number | undefined;
  let isDragEnd = false;
  const pixels = () => width / Math.max(1, element.getBoundingClientRect().width);
  const placeOf = ({ clientX, clientY }: MouseEvent): Pixel => {
    const frame = element.getBoundingClientRect();
    return { x: (clientX - frame.left) * pixels(), y: (clientY - frame.top) * pixels() };
  };
  const dotAt = (target: EventTarget | null) => (target as Element).closest<SVGElement>("[data-place]");
  const indexOf = (target: EventTarget | null) => {
    const dot = dotAt(target);
    return dot ? Number(dot.dataset.place) : undefined;
  };

  element.addEventListener("pointerdown", (event) => {
    dragged = event.button === 0 ? indexOf(event.target) : undefined;
    isDragEnd = dragged !== undefined;
    if (dragged === undefined) return;
    element.setPointerCapture(event.pointerId);
    dotAt(event.target)!.focus();
    event.preventDefault();
  });
  element.addEventListener("pointermove", (event) => {
    if (dragged !== undefined) actions.move(dragged, placeOf(event));
  });
  for (const end of ["pointerup", "pointercancel"])
    element.addEventListener(end, () => {
      dragged = undefined;
    });
  element.addEventListener("click", (event) => {
    // A drag ends with a click of its own.
    if (!isDragEnd) actions.add(placeOf(event));
  });
  element.addEventListener("keydown", (event) => {
    const index = indexOf(event.target);
    const place = index === undefined ? undefined : shown[index];
    if (index === undefined || !place) return;
    const step = STEPS[event.key];
    const far = (event.shiftKey ? FAR_STEP : 1) * pixels();
    if (step) actions.move(index, { x: place.x + far * step.x, y: place.y + far * step.y });
    else if (event.key === "Delete" || event.key === "Backspace") actions.remove(index);
    else return;
    event.preventDefault();
  });

  const dotFor = ({ x, y }: Pixel, index: number) =>
    s(
      "g",
      {
        class: index < MARKS ? "trace-mark" : "trace-point",
        tabindex: 0,
        role: "button",
        "aria-label": `${nameOf(index)}: arrow keys move it, Delete removes it`,
        "data-place": index,
      },
      s("circle", { cx: x, cy: y, r: TOUCH_RADIUS * pixels(), class: "trace-touch" }),
      s("circle", { cx: x, cy: y, r: DOT_RADIUS * pixels(), class: "trace-dot" }),
    );

  return {
    element,
    pixels,
    show: (places) => {
      shown = places;
      const text = (some: readonly Pixel[]) => some.map(({ x, y }) => `${x},${y}`).join(" ");
      line.setAttribute("points", text(places.slice(MARKS)));
      const [first, second] = places;
      for (const [name, value] of Object.entries({ x1: first?.x, y1: first?.y, x2: second?.x, y2: second?.y }))
        scale.setAttribute(name, String((second && value) ?? 0));
      const focused = element.contains(document.activeElement) ? indexOf(document.activeElement) : undefined;
      replaceContent(dots, places.map(dotFor));
      if (focused !== undefined)
        (dots.children[Math.min(focused, places.length - 1)] as SVGElement | undefined)?.focus();
    },
  };
}
