import type { PassesForOne } from "../../choice/compare/verdict.ts";
import type { ToneStops } from "../../choice/map/cell-settings.ts";
import { stressWords } from "../../choice/map/stress-words.ts";
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
import { selectField } from "./select-field.ts";

const TONES = [
  ["open", "at 10"],
  ["turned", "at 10, 6, 3 and 0"],
] as const satisfies readonly (readonly [ToneStops, string])[];

const PASSES = [
  ["none", "nobody hears a difference (under 0.5 dB)"],
  ["edge", "a difference is at the edge of hearing (under 1.25 dB)"],
] as const satisfies readonly (readonly [PassesForOne, string])[];

/** From this on the axis is told as brighter to the right; a choice, no source. */
const TELLING_CORRELATION = 0.5;

function axesWords({ brightness, fullness }: DrawnMap): string {
  const words = [
    ...(brightness >= TELLING_CORRELATION ? ["brighter to the right"] : []),
    ...(fullness >= TELLING_CORRELATION ? ["fuller upwards"] : []),
  ];
  const side = words.length > 0 ? `On the whole it is ${words.join(" and ")}; the axes` : "The axes";
  return `${side} have no unit of their own, only distances tell: the RMS difference of the ERB bands at equal loudness (Plomp 1970), of a strummed chord.`;
}

function countWords({ cells, silent, cut, guards }: DrawnMap): string {
  const count = `${cells.length} cells of ${guards.length} ${guards.length === 1 ? "guard" : "guards"}.`;
  const mute = silent > 0 ? ` ${silent} more give no sound.` : "";
  const names = cut.map((guard) => guards[guard]!.name).join(", ");
  return `${count}${mute}${cut.length > 0 ? ` Of ${names}, which would make too many, small switches stay down.` : ""}`;
}

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
    replaceContent(
      about,
      h("p", {}, `${countWords(shown)} ${stressWords(shown.stress1)}`),
      h(
        "p",
        { class: "hint" },
        `${axesWords(shown)} Arrow keys or a tap go to a dot and play it, with a mouse the way over it does; every dot plays equally loud. Dots that would hide each other stand side by side.`,
      ),
    );
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
    const guards = ticks.ticked;
    const { hand, stringAge: strings } = bench.store.state;
    told.textContent = guards.length === 0 ? "Tick a guard at least." : "Working the map out…";
    result.hidden = guards.length === 0;
    bar.hidden = guards.length === 0;
    if (guards.length === 0) return;
    try {
      const builds = guards.map(({ reading }) => reading.build);
      const question = { builds, tones: tones.read(), playing: { hand, strings } };
      const mapped = await cellEngine.map(question, (share) => {
        if (isLatest()) bar.value = share;
      });
      const alike = await cellEngine.equals(passes.read());
      if (!isLatest()) return;
      told.textContent = "";
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
      ticks.show(await onHand.list());
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
