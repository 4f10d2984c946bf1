import { createChoiceRow } from "../controls/choice-row.ts";
import { h } from "../dom/element.ts";
import { createFold } from "../dom/fold.ts";
import type { AppStore, FamilyAxis, LevelView } from "../state/app-state.ts";
import { createStaleNote } from "../state/stale-note.ts";
import { axisOf } from "./axes.ts";
import { createExportButtons } from "./export-buttons.ts";
import type { Picture } from "./picture.ts";
import { CurvePlot } from "./plot.ts";
import { featuresText, showReadout } from "./readout.ts";
import { createToleranceSwitch } from "./tolerance-band.ts";

const KEY_STEPS: Readonly<Record<string, number>> = { ArrowLeft: -1, ArrowRight: 1, PageDown: -16, PageUp: 16 };

function familyRow(store: AppStore): HTMLElement {
  const row = createChoiceRow<FamilyAxis>(
    "Behind it",
    [
      { value: "tone", label: "tone 0–10" },
      { value: "position", label: "positions" },
      { value: "volume", label: "volume" },
      { value: "builds", label: "guard B" },
    ],
    (family) => store.set({ family }),
  );
  store.watch((state) => [state.family], row.show);
  store.watch(
    (state) => [state.reading, state.other],
    (reading, other) =>
      row.allow((family) =>
        family === "builds" ? other !== undefined : !!reading && axisOf(reading, family) !== undefined,
      ),
  );
  return row.element;
}

function levelRow(store: AppStore): HTMLElement {
  const row = createChoiceRow<LevelView>(
    "Level",
    [
      { value: "reference", label: "over 200 Hz" },
      { value: "true", label: "true" },
    ],
    (levelView) => store.set({ levelView }),
  );
  store.watch((state) => [state.levelView], row.show);
  return row.element;
}

/** The curves with their choices, and a readout that follows the pointer or the arrow keys. */
export function createCurvesPanel(store: AppStore): HTMLElement {
  const frame = h("div", {
    class: "plot",
    tabindex: 0,
    role: "img",
    "aria-label": "Frequency response; left and right arrow keys move the readout",
  });
  const readout = h("div", { class: "readout" });
  let picture: Picture | undefined;
  const plot = new CurvePlot(frame, (index) => picture && showReadout(readout, picture, index));
  frame.addEventListener("keydown", (event) => {
    const step = KEY_STEPS[event.key];
    if (step === undefined) return;
    event.preventDefault();
    plot.step(step);
  });
  store.watch(
    (state) => [state.view?.family, state.levelView, state.band],
    (family, view, band) => {
      if (!family) return;
      picture = { family, view, band };
      plot.show(picture);
      showReadout(readout, picture, null);
      frame.setAttribute("aria-label", `Frequency response. ${featuresText(picture.family.current)}`);
    },
  );
  return h(
    "section",
    { class: "panel curves", id: "curves", "aria-labelledby": "curves-title" },
    h("h2", { id: "curves-title" }, "Curves"),
    createStaleNote(store, "the curves and what is played are"),
    frame,
    readout,
    createFold(
      "Compare, level, tolerances, save",
      h(
        "div",
        { class: "row" },
        familyRow(store),
        levelRow(store),
        createToleranceSwitch(store),
        createExportButtons(store, plot, () => picture),
      ),
    ),
  );
}
