import { cellEngine } from "../cells/cell-engine.ts";
import type { CellRooms } from "../cells/cell-rooms.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import { addsView } from "./adds-view.ts";
import { createDotCard } from "./dot-card.ts";
import type { DrawnMap } from "./drawn-map.ts";
import { duplicatesView } from "./duplicates-view.ts";
import { fewestView } from "./fewest-view.ts";
import { Liked } from "./liked.ts";
import { MapPicture } from "./map-picture.ts";
import { createMapTable } from "./map-table.ts";
import { mapWords } from "./map-words.ts";

export interface MapResult {
  readonly element: HTMLElement;
  show(map: DrawnMap): void;
}

/** A map once it is worked out: the picture, and what follows from it. @param say tells a person something, or nothing more */
export function createMapResult({ player, board }: CellRooms, say: (error: unknown) => void): MapResult {
  const liked = new Liked();
  const about = h("div", { class: "stack" });
  const fewest = h("div", {});
  const duplicates = h("div", {});
  const adds = h("div", {});
  let map: DrawnMap | undefined;
  const likedDots = () => (map ? [...map.dots.keys()].filter((dot) => liked.has(map!.dots[dot]!.key)) : []);
  const cardId = freshId("dot");
  const showMarks = () => {
    if (!map) return;
    const { chosen } = picture;
    const playing = map.dots.findIndex(({ key }) => key === player.current);
    picture.mark({
      liked: new Set(likedDots()),
      playing: playing < 0 ? undefined : playing,
      equal: chosen === undefined ? [] : map.alike.equals[chosen]!,
    });
    card.show(map, chosen);
  };
  const showFewest = async () => {
    const shown = map;
    const dots = likedDots();
    const cover = dots.length > 0 ? await cellEngine.fewest(dots) : undefined;
    if (shown && shown === map) replaceContent(fewest, fewestView(shown, dots, cover, like));
  };
  const like = (dot: number) => {
    liked.toggle(map!.dots[dot]!.key);
    showMarks();
    showFewest().catch(say);
  };
  const toggle = (dot: number) => {
    const cell = map!.dots[dot]!;
    if (player.current === cell.key) player.stop();
    else player.play(cell).catch(say);
  };
  const choose = (dot: number, byHover: boolean) => {
    say(undefined);
    picture.choose(dot);
    if (!byHover || player.mayFollow) player.play(map!.dots[dot]!).catch(say);
    showMarks();
  };
  const picture = new MapPicture({ choose, toggle, like, stop: () => player.stop() }, cardId);
  const card = createDotCard(cardId, { player, board, liked, toggle, like, say });
  const table = createMapTable((dot) => choose(dot, false));
  player.watch(showMarks);
  return {
    element: h(
      "div",
      { class: "stack", hidden: true },
      about,
      picture.element,
      card.element,
      h("h3", {}, "The fewest guards for what I like"),
      fewest,
      h("h3", {}, "What there is twice"),
      duplicates,
      h("h3", {}, "What each guard adds"),
      adds,
      table.element,
    ),
    show: (shown) => {
      map = shown;
      replaceContent(about, mapWords(shown));
      picture.show({ places: shown.places, guards: shown.cells.map(({ guard }) => guard) });
      replaceContent(duplicates, duplicatesView(shown));
      replaceContent(adds, addsView(shown));
      table.show(shown);
      showMarks();
      showFewest().catch(say);
    },
  };
}
