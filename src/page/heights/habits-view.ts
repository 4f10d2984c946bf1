import type { HeightsAnswer } from "../../contract/bench/heights.ts";
import { h, replaceContent } from "../dom/element.ts";
import { latestOnly, whileShown } from "../dom/later.ts";
import type { BenchEngine } from "../engine/bench-engine.ts";
import type { AppStore } from "../state/app-state.ts";

type HabitsTold = NonNullable<HeightsAnswer["habits"]>;

function listOf(title: string, texts: readonly string[]): HTMLElement {
  const items = texts.map((text) => h("li", {}, text));
  return h("div", {}, h("h4", {}, title), h("ul", { class: "told" }, items));
}

function habitsView({ heights, volume, tone, notes }: HabitsTold): HTMLElement {
  return h(
    "div",
    { class: "stack" },
    listOf("Heights", heights),
    listOf(
      "Volume",
      volume.map(({ text }) => text),
    ),
    listOf(
      "Tone",
      tone.map(({ text }) => text),
    ),
    h("p", { class: "hint" }, notes.join(" ")),
  );
}

const WITHOUT_OTHER =
  "Keep the guard that is in the guitar now as B (under A against B or Rewire): what changes with the one on the bench is told here.";

/** What changes for the player when the guard on the bench takes the place of the one kept as B. */
export function createHabits(store: AppStore, engine: BenchEngine): HTMLElement {
  const shown = h("div", { "aria-live": "polite" });
  const element = h(
    "section",
    { class: "stack" },
    h("h3", {}, "What changes when this guard goes into the guitar"),
    shown,
  );
  const latest = latestOnly();
  const work = whileShown(element, async () => {
    const isLatest = latest();
    const { reading, other } = store.state;
    if (!reading || !other) return replaceContent(shown, h("p", {}, WITHOUT_OTHER));
    try {
      const habits = await engine.habits(other.build, reading.build);
      if (isLatest()) replaceContent(shown, habitsView(habits));
    } catch (error) {
      if (isLatest()) replaceContent(shown, h("p", { class: "fault-text" }, (error as Error).message));
    }
  });
  store.watch(
    (state) => [state.reading, state.other],
    (_reading, _other) => void work(),
  );
  return element;
}
