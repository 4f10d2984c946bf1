import { UNITS_PER_METRE } from "../arrange.ts";
import type { GuardDrawing } from "../guard-drawing.ts";
import type { Point } from "../point.ts";
import { type SeenLug, seenFrom } from "../view.ts";
import type { Hand } from "./hand.ts";

const DIRECTIONS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};
const KEY_STEP_METRES = 0.001;
/** How much more a lug counts as away that lies to the side. */
const ASIDE = 2;

/** The nearest lug that way. */
export function lugTowards(
  lugs: Iterable<SeenLug>,
  from: Pick<SeenLug, "name" | "x" | "y">,
  way: Point,
): string | undefined {
  let nearest: string | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const { name, x, y } of lugs) {
    const [dx, dy] = [x - from.x, y - from.y];
    const along = dx * way.x + dy * way.y;
    const aside = Math.abs(dx * way.y - dy * way.x);
    if (name === from.name || along <= 0 || aside > ASIDE * along) continue;
    const away = along + ASIDE * aside;
    if (away >= least) continue;
    least = away;
    nearest = name;
  }
  return nearest;
}

function elementOf(drawing: GuardDrawing | undefined, key: "lug" | "part", name: string): SVGElement | null {
  return drawing?.element.querySelector<SVGElement>(`[data-${key}="${CSS.escape(name)}"]`) ?? null;
}

/** One lug of the drawing is where Tab goes; arrow keys walk on from there. */
export class LugFocus {
  readonly #frame: HTMLElement;
  readonly #drawing: () => GuardDrawing | undefined;
  #lug = "";

  constructor(frame: HTMLElement, drawing: () => GuardDrawing | undefined) {
    this.#frame = frame;
    this.#drawing = drawing;
  }

  /** What has the focus within the drawing, as far as it will be there again once the drawing is drawn anew. */
  kept(): (() => void) | undefined {
    const { activeElement } = document;
    if (!(activeElement instanceof SVGElement) || !this.#frame.contains(activeElement)) return undefined;
    const { lug, part } = activeElement.dataset;
    if (lug !== undefined) return () => this.focus("lug", lug);
    return part === undefined ? undefined : () => this.focus("part", part);
  }

  focus(key: "lug" | "part", name: string): void {
    elementOf(this.#drawing(), key, name)?.focus();
  }

  /** Makes a lug the one that Tab goes to; without a name, the one before, or the first. */
  stand(name = this.#lug): void {
    const drawing = this.#drawing();
    if (!drawing) return;
    elementOf(drawing, "lug", this.#lug)?.setAttribute("tabindex", "-1");
    this.#lug = drawing.lugs.has(name) ? name : ([...drawing.lugs.keys()][0] ?? "");
    elementOf(drawing, "lug", this.#lug)?.setAttribute("tabindex", "0");
  }
}

function lugKey(event: KeyboardEvent, lug: string, drawing: GuardDrawing, hand: Hand, focus: LugFocus): boolean {
  if (event.key === "Enter" || event.key === " ") {
    hand.tapLug(lug);
    return true;
  }
  const way = DIRECTIONS[event.key];
  if (!way) return false;
  const next = lugTowards(drawing.lugs.values(), drawing.lugs.get(lug)!, way);
  if (next !== undefined) focus.focus("lug", next);
  return true;
}

function partKey(event: KeyboardEvent, part: string, drawing: GuardDrawing, hand: Hand): boolean {
  if (event.key === "Enter" || event.key === " ") {
    hand.choose({ kind: "part", name: part });
    return true;
  }
  const way = DIRECTIONS[event.key];
  if (!way) return false;
  const { x, y } = seenFrom(drawing.input.side, way);
  hand.movePart(part, { x: x * KEY_STEP_METRES * UNITS_PER_METRE, y: y * KEY_STEP_METRES * UNITS_PER_METRE });
  return true;
}

/** The keyboard on the drawing. */
export function listenForKeys(
  frame: HTMLElement,
  hand: Hand,
  focus: LugFocus,
  drawing: () => GuardDrawing | undefined,
): void {
  frame.addEventListener("keydown", (event) => {
    const now = drawing();
    if (!now || event.ctrlKey || event.metaKey || event.altKey || !(event.target instanceof SVGElement)) return;
    const { lug, part } = event.target.dataset;
    const isDone =
      lug !== undefined ? lugKey(event, lug, now, hand, focus) : part !== undefined && partKey(event, part, now, hand);
    if (isDone) event.preventDefault();
  });
  frame.addEventListener("focusin", (event) => {
    const { lug } = (event.target as SVGElement).dataset;
    if (lug === undefined) return;
    focus.stand(lug);
    hand.point(lug);
  });
}
