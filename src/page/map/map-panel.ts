import type { PassesForOne } from "../../choice/compare/verdict.ts";
import type { ToneStops } from "../../choice/map/cell-settings.ts";
import { cellEngine } from "../cells/cell-engine.ts";
import type { CellRooms } from "../cells/cell-rooms.ts";
import { h } from "../dom/element.ts";
import { latestOnly, whileShown } from "../dom/later.ts";
import { drawnMap } from "./drawn-map.ts";
import { createGuardTicks } from "./guard-ticks.ts";
import { createMapResult } from "./map-result.ts";
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
  const { bench, onHand } = rooms;
  const told = h("p", { class: "hint", role: "status" });
  const bar = h("progress", { max: 1, value: 0, "aria-label": "The map", hidden: true });
  const say = (error: unknown) => {
    told.textContent = error === undefined ? "" : (error as Error).message;
  };
  const result = createMapResult(rooms, say);
  const latest = latestOnly();
  const draw = async () => {
    const isLatest = latest();
    const { ticked } = ticks;
    const { hand, stringAge: strings } = bench.store.state;
    told.textContent = ticked.length === 0 ? "Tick a guard at least." : "Working the map out…";
    result.element.hidden = ticked.length === 0;
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
      result.element.hidden = false;
      result.show(drawnMap(mapped, guards, alike));
    } catch (error) {
      if (!isLatest()) return;
      result.element.hidden = true;
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
    result.element,
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
  return element;
}
