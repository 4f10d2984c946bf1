import type { PassesForOne } from "../../choice/compare/verdict.ts";
import type { ToneStops } from "../../choice/map/cell-settings.ts";
import { cellEngine } from "../cells/cell-engine.ts";
import type { CellRooms } from "../cells/cell-rooms.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import { latestOnly, whileShown } from "../dom/later.ts";
import { addsView } from "./adds-view.ts";
import { createDotCard } from "./dot-card.ts";
import { type DrawnMap, drawnMap } from "./drawn-map.ts";
import { duplicatesView } from "./duplicates-view.ts";
import { fewestView } from "./fewest-view.ts";
import { createGuardTicks } from "./guard-ticks.ts";
import { Liked } from "./liked.ts";
import { MapPicture } from "./map-picture.ts";
import { createMapTable } from "./map-table.ts";
import { mapWords } from "./map-words.ts";
import { selectField } from "./select-field.ts";

const TONES = [
  ["open", "at 10"],
  ["turned", "at 10, 6, 3 and 0"],
] as const satisfies readonly (readonly [ToneStops, string])[];

const PASSES = [
  ["none", "nobody hears a difference (under 0.5 dB)"],
  ["edge", "a difference is at the edge of hearing (under 1.25 dB)"],
] as const satisfies readonly (readonly [PassesForOne, string])[];

/** All cells of all guards, near ones alike: to hear, to find what there is twice, and what one could do without. */
export function createMapPanel(rooms: CellRooms): HTMLElement {
  const { bench, onHand, player, board } = rooms;
  const liked = new Liked();
  const told = h("p", { class: "hint", role: "status" });
  const bar = h("progress", { max: 1, value: 0, "aria-label": "The map", hidden: true });
  const about = h("div", { class: "stack" });
  const fewest = h("div", {});
  const duplicates = h("div", {});
  const adds = h("div", {});
  let map: DrawnMap | undefined;
  const say = (error: unknown) => {
    told.textContent = (error as Error).message;
  };
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
    told.textContent = "";
    picture.choose(dot);
    if (!byHover || player.mayFollow) player.play(map!.dots[dot]!).catch(say);
    showMarks();
  };
  const picture = new MapPicture({ choose, toggle, like, stop: () => player.stop() }, cardId);
  const card = createDotCard(cardId, { player, board, liked, toggle, like, say });
  const table = createMapTable((dot) => choose(dot, false));
  const result = h(
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
  );
  const show = (shown: DrawnMap) => {
    map = shown;
    result.hidden = false;
    replaceContent(about, mapWords(shown));
    picture.show({ places: shown.places, guards: shown.cells.map(({ guard }) => guard) });
    replaceContent(duplicates, duplicatesView(shown));
    replaceContent(adds, addsView(shown));
    table.show(shown);
    showMarks();
    showFewest().catch(say);
  };
  const latest = latestOnly();
  const draw = async () => {
    const isLatest = latest();
    const { ticked } = ticks;
    const { hand, stringAge: strings } = bench.store.state;
    told.textContent = ticked.length === 0 ? "Tick a guard at least." : "Working the map out…";
    result.hidden = ticked.length === 0;
    bar.hidden = ticked.length === 0;
    if (ticked.length === 0) return;
    try {
      const { guards, unreadable } = await onHand.read(ticked);
      if (!isLatest()) return;
      const builds = guards.map(({ reading }) => reading.build);
      const question = { builds, tones: tones.read(), playing: { hand, strings } };
      const mapped = await cellEngine.map(question, (share) => {
        if (isLatest()) bar.value = share;
      });
      const alike = await cellEngine.equals(passes.read());
      if (!isLatest()) return;
      told.textContent = unreadable.length > 0 ? `Cannot be read, and so not heard: ${unreadable.join(", ")}.` : "";
      show(drawnMap(mapped, guards, alike));
    } catch (error) {
      if (!isLatest()) return;
      result.hidden = true;
      say(error);
    } finally {
      if (isLatest()) bar.hidden = true;
    }
  };
  const ticks = createGuardTicks(() => void draw());
  const tones = selectField("Tones", TONES, () => void draw());
  const passes = selectField("Two cells are one where", PASSES, () => void draw());
  const element = h(
    "div",
    { class: "stack map-panel" },
    ticks.element,
    h("div", { class: "field-row" }, tones.element, passes.element),
    told,
    bar,
    result,
  );
  const refresh = whileShown(element, async () => {
    try {
      ticks.show(await onHand.names());
      await draw();
    } catch (error) {
      say(error);
    }
  });
  bench.store.watchAny(({ reading, hand, stringAge }) => [reading, hand, stringAge], refresh);
  void rooms.shelfChanged(refresh);
  player.watch(showMarks);
  return element;
}
