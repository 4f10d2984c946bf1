import { createChoiceRow } from "../controls/choice-row.ts";
import { h } from "../dom/element.ts";
import { createZoom } from "../drawing/hand/zoom.ts";
import { zoomButtons } from "../drawing/hand/zoom-buttons.ts";
import type { RewiringTold } from "../engine/rewire-told.ts";
import type { Reading } from "../state/reading.ts";
import type { Store } from "../state/store.ts";
import { listenToJoints } from "./joint-keys.ts";
import { rewireLegend } from "./legend.ts";
import { Pointed } from "./pointed.ts";
import { drawRewiring } from "./rewiring-drawing.ts";
import { type Belongs, sceneOf } from "./scene.ts";
import { createStepList } from "./steps-view.ts";

export interface RewireView {
  /** Whose parts, wires and joints the drawings show. */
  readonly shows: Belongs;
}

export interface Rewiring {
  readonly found: Reading;
  readonly wanted: Reading;
  readonly told: RewiringTold;
}

function showsRow(view: Store<RewireView>) {
  return createChoiceRow<Belongs>(
    "Show the guard",
    [
      { value: "found", label: "as found" },
      { value: "wanted", label: "as wanted" },
      { value: "both", label: "both" },
    ],
    (shows) => view.set({ shows }),
  );
}

/** Scrolls the frame alone, and only where the sign is not in it. */
function reveal(frame: HTMLElement, sign: Element): void {
  const [room, { left, top, width, height }] = [frame.getBoundingClientRect(), sign.getBoundingClientRect()];
  const isIn = left >= room.left && left + width <= room.right && top >= room.top && top + height <= room.bottom;
  if (isIn) return;
  frame.scrollBy(left + width / 2 - room.left - room.width / 2, top + height / 2 - room.top - room.height / 2);
}

/**
 * A drawing and the list of its joints, each lighting what is pointed at in the other.
 * @param sheet tells the ticks of one list from those of another
 */
export function createRewiringSheet(
  { found, wanted, told }: Rewiring,
  way: "there" | "home",
  sheet: string,
  view: Store<RewireView>,
): HTMLElement {
  const steps = way === "there" ? told.steps : told.home;
  const scene = sceneOf(found.build, wanted.build, told, way);
  const label = way === "there" ? "Drawing of the rewiring" : "Drawing of the way home";
  const drawing = drawRewiring(scene, steps, way === "there" ? "found" : "wanted", label);
  const frame = h(
    "div",
    { class: "drawing-frame rewire-frame", tabindex: 0, role: "group", "aria-label": `${label}, to scroll` },
    drawing.element,
  );
  const pointed = new Pointed((step) => {
    drawing.light(step);
    list.light(step);
  });
  const bring = (step: number) => reveal(frame, drawing.joints[step]!);
  const list = createStepList(sheet, steps, pointed, { bring, ticked: drawing.tick });
  const walk = listenToJoints(drawing.joints, pointed, list.show);
  const row = showsRow(view);
  view.watch(
    (state) => [state.shows],
    (shows) => {
      row.show(shows);
      drawing.element.dataset.shows = shows;
      walk.stand();
    },
  );
  return h(
    "div",
    { class: "rewire-columns" },
    h(
      "div",
      { class: "stack" },
      h("div", { class: "rewire-tools no-print" }, row.element, zoomButtons(createZoom(frame))),
      rewireLegend(),
      h("p", { class: "hint scroll-hint no-print" }, "The drawing is wider than the page: scroll it sideways."),
    ),
    frame,
    list.element,
  );
}
