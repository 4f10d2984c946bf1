import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";

/** What the example is about, and the question it puts. */
export function createStory(store: AppStore): HTMLElement {
  const element = h("details", { class: "story" });
  store.watch(
    (state) => [state.story],
    (story) => {
      element.hidden = story === undefined;
      if (story) replaceContent(element, h("summary", {}, story.question), h("p", {}, story.description));
    },
  );
  return element;
}
