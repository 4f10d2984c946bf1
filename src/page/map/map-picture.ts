import { markOf } from "../cells/marks.ts";
import { h, replaceContent, s } from "../dom/element.ts";
import { dotsOf, HEIGHT, WIDTH } from "./dots.ts";
import { createMapZoom } from "./map-zoom.ts";
import { type Direction, type Dot, dotAt, dotBeside, dotTowards } from "./nearest.ts";

const RADIUS = 9;
/** A finger's reach and a mouse's, in pixels of the screen. */
const REACH = { touch: 24, mouse: 12 };
const HOVER_MS = 120;

type Move = (dots: readonly Dot[], from: number) => number | undefined;

const towards =
  (direction: Direction): Move =>
  (dots, from) =>
    dotTowards(dots, from, direction);

const MOVES: Readonly<Record<string, Move>> = {
  ArrowLeft: towards("left"),
  ArrowRight: towards("right"),
  ArrowUp: towards("up"),
  ArrowDown: towards("down"),
  PageUp: (dots, from) => dotBeside(dots, from, -1),
  PageDown: (dots, from) => dotBeside(dots, from, 1),
};

/** What is drawn of a map. */
export interface Drawn {
  /** x0, y0, x1 …, y up. */
  readonly places: Float64Array;
  /** Of every dot its guard's number. */
  readonly guards: readonly number[];
}

export interface PictureActions {
  /** A dot is pointed out; `byHover` where a mouse only passes over it. */
  choose(dot: number, byHover: boolean): void;
  toggle(dot: number): void;
  like(dot: number): void;
  stop(): void;
}

/** The map as dots, each marked by its guard's shape and colour. */
export class MapPicture {
  readonly element: HTMLElement;
  readonly #svg = s("svg", { class: "sound-map", viewBox: `0 0 ${WIDTH} ${HEIGHT}`, "aria-hidden": "true" });
  readonly #frame: HTMLElement;
  readonly #actions: PictureActions;
  #dots: readonly Dot[] = [];
  #marks: readonly SVGElement[] = [];
  #chosen: number | undefined;
  #hover: ReturnType<typeof setTimeout> | undefined;

  /** @param describedBy id of what tells about the chosen dot */
  constructor(actions: PictureActions, describedBy: string) {
    this.#actions = actions;
    this.#frame = h(
      "div",
      {
        class: "map-frame",
        tabindex: 0,
        role: "application",
        "aria-label":
          "Map of sounds: arrows go from dot to dot and play, Page Up and Page Down through all from left to right, Enter plays or stops, L likes",
        "aria-describedby": describedBy,
      },
      this.#svg,
    );
    this.element = h("div", { class: "stack" }, this.#frame, createMapZoom(this.#frame));
    this.#listen();
  }

  show({ places, guards }: Drawn): void {
    this.#dots = dotsOf(places);
    this.#chosen = undefined;
    this.#marks = this.#dots.map(({ x, y }, index) => {
      const { path, colour } = markOf(guards[index]!);
      return s(
        "g",
        { transform: `translate(${x.toFixed(1)} ${y.toFixed(1)}) scale(${RADIUS})` },
        s("path", { d: path, class: `mark mark-${colour}` }),
      );
    });
    replaceContent(this.#svg, ...this.#marks);
  }

  get chosen(): number | undefined {
    return this.#chosen;
  }

  choose(dot: number | undefined): void {
    if (this.#chosen !== undefined) this.#marks[this.#chosen]?.classList.remove("chosen");
    this.#chosen = dot;
    if (dot === undefined) return;
    const mark = this.#marks[dot]!;
    mark.classList.add("chosen");
    // On top of those that lie in the same place.
    this.#svg.append(mark);
  }

  /** @param dots those that are liked, that play and that pass for the chosen one */
  mark(dots: {
    readonly liked: ReadonlySet<number>;
    readonly playing: number | undefined;
    readonly equal: readonly number[];
  }): void {
    const equal = new Set(dots.equal);
    for (const [index, mark] of this.#marks.entries()) {
      mark.classList.toggle("liked", dots.liked.has(index));
      mark.classList.toggle("playing", index === dots.playing);
      mark.classList.toggle("equal", equal.has(index));
    }
  }

  #at(event: PointerEvent | MouseEvent, reach: number): number | undefined {
    const { left, top, width } = this.#svg.getBoundingClientRect();
    const unit = WIDTH / width;
    return dotAt(this.#dots, { x: (event.clientX - left) * unit, y: (event.clientY - top) * unit }, reach * unit);
  }

  #listen(): void {
    this.#svg.addEventListener("pointermove", (event) => {
      if (event.pointerType !== "mouse") return;
      clearTimeout(this.#hover);
      const dot = this.#at(event, REACH.mouse);
      this.#frame.classList.toggle("on-dot", dot !== undefined);
      if (dot === undefined || dot === this.#chosen) return;
      this.#hover = setTimeout(() => this.#actions.choose(dot, true), HOVER_MS);
    });
    this.#svg.addEventListener("pointerleave", () => clearTimeout(this.#hover));
    this.#svg.addEventListener("click", (event) => {
      const isMouse = (event as PointerEvent).pointerType === "mouse";
      const dot = this.#at(event, isMouse ? REACH.mouse : REACH.touch);
      clearTimeout(this.#hover);
      if (dot !== undefined) this.#actions.choose(dot, false);
    });
    this.#frame.addEventListener("keydown", (event) => this.#key(event));
  }

  #key(event: KeyboardEvent): void {
    if (event.ctrlKey || event.altKey || event.metaKey || this.#dots.length === 0) return;
    const chosen = this.#chosen;
    const goes = MOVES[event.key];
    if (goes) {
      const next = chosen === undefined ? 0 : goes(this.#dots, chosen);
      if (next !== undefined) this.#actions.choose(next, false);
    } else if (event.key === "Escape") this.#actions.stop();
    else if ((event.key === "Enter" || event.key === " ") && chosen !== undefined) this.#actions.toggle(chosen);
    else if (event.key.toLowerCase() === "l" && chosen !== undefined) this.#actions.like(chosen);
    else return;
    event.preventDefault();
    if (goes) this.#bringIntoView();
  }

  #bringIntoView(): void {
    if (this.#chosen !== undefined) this.#marks[this.#chosen]?.scrollIntoView({ block: "nearest", inline: "nearest" });
  }
}
