import type { Board } from "../board/board.ts";
import { cellName } from "../cells/cell.ts";
import type { CellPlayer } from "../cells/cell-player.ts";
import { markSign } from "../cells/mark-sign.ts";
import { markOf } from "../cells/marks.ts";
import { showHz } from "../curves/units.ts";
import { h, replaceContent } from "../dom/element.ts";
import { type DrawnMap, namesOf } from "./drawn-map.ts";
import type { Liked } from "./liked.ts";

export interface DotActions {
  readonly player: CellPlayer;
  readonly board: Board;
  readonly liked: Liked;
  toggle(dot: number): void;
  like(dot: number): void;
  say(error: unknown): void;
}

export interface DotCard {
  readonly element: HTMLElement;
  show(map: DrawnMap, dot: number | undefined): void;
}

/** What is told of the dot that is chosen, and what can be done with its cell. */
export function createDotCard(id: string, { player, board, liked, toggle, like, say }: DotActions): DotCard {
  const text = h("div", { id, class: "dot-text", "aria-live": "polite" });
  const play = h("button", { type: "button", class: "primary" });
  const likes = h("button", { type: "button" }, "I like this");
  const put = h("button", { type: "button" }, "Put on the listening board");
  const buttons = h("div", { class: "buttons" }, play, likes, put);
  let shown: { readonly map: DrawnMap; readonly dot: number } | undefined;
  const act = (action: (dot: number, map: DrawnMap) => void) => () => shown && action(shown.dot, shown.map);
  play.addEventListener("click", act(toggle));
  likes.addEventListener("click", act(like));
  put.addEventListener(
    "click",
    act((dot, { dots }) => {
      const isOn = board.add([dots[dot]!]) > 0;
      say(new Error(isOn ? `On the board: ${cellName(dots[dot]!)}.` : "The listening board is full."));
    }),
  );
  const words = (map: DrawnMap, dot: number) => {
    const { guard, brightnessHz } = map.cells[dot]!;
    const equal = map.alike.equals[dot]!;
    return [
      h(
        "p",
        {},
        markSign(guard),
        h("b", {}, ` ${cellName(map.dots[dot]!)}`),
        h("span", { class: "hint" }, ` ${markOf(guard).shape}, brightness ${showHz(brightnessHz)}`),
      ),
      h("p", {}, equal.length === 0 ? "No other cell passes for it." : `Passes for ${namesOf(map, equal)}.`),
    ];
  };
  let before: string | undefined;
  return {
    element: h("div", { class: "dot-card" }, text, buttons),
    show: (map, dot) => {
      shown = dot === undefined ? undefined : { map, dot };
      buttons.hidden = dot === undefined;
      const key = dot === undefined ? "" : map.dots[dot]!.key;
      // Said again only where it is another one.
      if (key !== before || dot === undefined)
        replaceContent(text, dot === undefined ? h("p", { class: "hint" }, "No dot is chosen.") : words(map, dot));
      before = key;
      if (dot === undefined) return;
      play.textContent = player.current === key ? "Stop" : "Play";
      likes.setAttribute("aria-pressed", String(liked.has(key)));
    },
  };
}
