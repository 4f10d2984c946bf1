import type { GuardDrawing } from "../guard-drawing.ts";
import type { Point } from "../point.ts";
import { seenFrom } from "../view.ts";
import type { Hand } from "./hand.ts";
import { shiftPart, stretchRubber } from "./in-hand-marks.ts";
import { lugNear, MOUSE_REACH, type Target, THUMB_REACH, targetAt, toDrawing } from "./pointing.ts";

/** CSS pixels before a press is a drag. */
const SLACK = 6;

interface Press {
  readonly pointer: number;
  readonly start: Point;
  readonly reach: number;
  readonly target: Target | undefined;
  readonly isTouch: boolean;
  last: Point;
  isDrag: boolean;
}

interface Ground {
  readonly frame: HTMLElement;
  readonly hand: Hand;
  readonly drawing: () => GuardDrawing | undefined;
}

const placeOf = ({ clientX, clientY }: { clientX: number; clientY: number }): Point => ({ x: clientX, y: clientY });

/** What a finger takes hold of at once; all else it may mean to scroll by. */
function isTakenByFinger(hand: Hand, target: Target | undefined): boolean {
  const { chosen } = hand.state.state;
  if (target?.kind === "part") return chosen?.kind === "part" && chosen.name === target.name;
  return target?.kind === "lug";
}

function tap({ hand, drawing }: Ground, target: Target | undefined): void {
  if (target?.kind === "lug") hand.tapLug(target.name);
  else if (target?.kind === "wire")
    hand.choose({ kind: "wire", wire: drawing()!.input.reading.source.wires[target.index]! });
  else if (target?.kind === "part") hand.choose(target);
  // Beside a lug is no reason to lose the wire in hand.
  else if (!hand.state.state.held) hand.choose(undefined);
}

class Dragging {
  readonly #ground: Ground;

  constructor(ground: Ground) {
    this.#ground = ground;
  }

  start({ target }: Press): void {
    const { hand, frame } = this.#ground;
    frame.classList.add("dragging");
    if (target?.kind === "lug") hand.takeUp(target.name);
  }

  move(press: Press, at: Point): void {
    const { hand, frame } = this.#ground;
    const drawing = this.#ground.drawing()!;
    if (press.target?.kind === "lug") {
      hand.point(lugNear(drawing, at, press.reach));
      stretchRubber(drawing, hand.state.state.held?.from, toDrawing(drawing, at));
    } else if (press.target?.kind === "part") shiftPart(drawing, press.target.name, this.#shift(press, at));
    else if (!press.isTouch) frame.scrollBy(press.last.x - at.x, press.last.y - at.y);
  }

  end(press: Press, at: Point): void {
    const { hand } = this.#ground;
    const drawing = this.#ground.drawing()!;
    this.stop();
    if (press.target?.kind === "lug") {
      const lug = lugNear(drawing, at, press.reach);
      if (lug === undefined) hand.letGo("Let go: there is no lug. Nothing was changed.");
      else hand.joinTo(lug);
    } else if (press.target?.kind === "part") {
      hand.movePart(press.target.name, seenFrom(drawing.input.side, this.#shift(press, at)));
    }
  }

  stop(): void {
    const { frame, drawing } = this.#ground;
    frame.classList.remove("dragging");
    stretchRubber(drawing()!, undefined);
  }

  #shift({ start }: Press, at: Point): Point {
    const drawing = this.#ground.drawing()!;
    const [a, b] = [toDrawing(drawing, start), toDrawing(drawing, at)];
    return { x: b.x - a.x, y: b.y - a.y };
  }
}

/** Pointing at the drawing: a tap chooses, a drag lays wires, moves parts or, on empty ground, the drawing under the hand. */
export function listenForGestures(ground: Ground): void {
  const { frame, hand, drawing } = ground;
  const dragging = new Dragging(ground);
  let press: Press | undefined;
  const onDrawing = (event: Event) => drawing()?.element.contains(event.target as Node);
  const abandon = () => {
    if (press?.isDrag) {
      dragging.stop();
      const { target } = press;
      if (target?.kind === "part") shiftPart(drawing()!, target.name, { x: 0, y: 0 });
      if (target?.kind === "lug") hand.letGo();
    }
    press = undefined;
  };
  frame.addEventListener("pointerdown", (event) => {
    // A second finger makes it a pinch.
    if (!event.isPrimary) abandon();
    else if (event.button === 0 && onDrawing(event)) {
      const isTouch = event.pointerType !== "mouse";
      const [reach, start] = [isTouch ? THUMB_REACH : MOUSE_REACH, placeOf(event)];
      const target = targetAt(drawing()!, start, reach);
      press = { pointer: event.pointerId, start, last: start, reach, target, isTouch, isDrag: false };
    }
  });
  frame.addEventListener("pointermove", (event) => {
    const at = placeOf(event);
    if (press?.pointer === event.pointerId) {
      const isFree = !press.isTouch || isTakenByFinger(hand, press.target);
      if (!press.isDrag && isFree && Math.hypot(at.x - press.start.x, at.y - press.start.y) > SLACK) {
        press.isDrag = true;
        frame.setPointerCapture(event.pointerId);
        dragging.start(press);
      }
      if (press.isDrag) dragging.move(press, at);
      press.last = at;
    } else if (event.pointerType === "mouse" && onDrawing(event)) {
      const now = drawing()!;
      hand.point(lugNear(now, at, MOUSE_REACH));
      const { held } = hand.state.state;
      if (held) stretchRubber(now, held.from, toDrawing(now, at));
    }
  });
  frame.addEventListener("pointerup", (event) => {
    if (press?.pointer !== event.pointerId) return;
    const ended = press;
    press = undefined;
    const at = placeOf(event);
    if (ended.isDrag) dragging.end(ended, at);
    else if (Math.hypot(at.x - ended.start.x, at.y - ended.start.y) <= 2 * SLACK) tap(ground, ended.target);
  });
  frame.addEventListener("pointercancel", abandon);
  frame.addEventListener("pointerleave", () => hand.point(undefined));
  // Whether a finger scrolls is decided here; what it takes hold of must not.
  const holdStill = (event: TouchEvent) => {
    const [finger, another] = event.touches;
    if (another || !onDrawing(event)) return;
    if (isTakenByFinger(hand, targetAt(drawing()!, placeOf(finger!), THUMB_REACH))) event.preventDefault();
  };
  frame.addEventListener("touchstart", holdStill, { passive: false });
  // A screen reader's press comes as a click alone.
  frame.addEventListener("click", (event) => {
    if (event.detail !== 0) return;
    const { lug, part } = (event.target as Element).closest<SVGElement>("[data-lug], [data-part]")?.dataset ?? {};
    if (lug !== undefined) hand.tapLug(lug);
    else if (part !== undefined) hand.choose({ kind: "part", name: part });
  });
}
