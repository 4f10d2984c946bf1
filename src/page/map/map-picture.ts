import { markOf } from "../cells/marks.ts";
import { h, replaceContent, s } from "../dom/element.ts";
import { dotsOf, HEIGHT, WIDTH } from "./dots.ts";
import { MOVES } from "./map-moves.ts";
import { listenToPointer } from "./map-pointer.ts";
import { createMapZoom } from "./map-zoom.ts";
import { type Dot, dotAt } from "./nearest.ts";

const RADIUS = 9;

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

  #listen(): void {
    const chosen = () => this.#chosen;
    listenToPointer(this.#svg, {
      at: (place, reach) => dotAt(this.#dots, place, reach),
      get chosen() {
        return chosen();
      },
      over: (dot) => this.#frame.classList.toggle("on-dot", dot !== undefined),
      choose: (dot, byHover) => this.#actions.choose(dot, byHover),
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
