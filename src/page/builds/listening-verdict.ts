import type { CompareAnswer } from "../../contract/compare.ts";
import { h, replaceContent } from "../dom/element.ts";
import { askedSignal } from "../listen/asked-signal.ts";
import { postJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";
import { fitSettings } from "../state/fit-settings.ts";
import { named } from "./difference-words.ts";

async function ask({ state }: AppStore): Promise<CompareAnswer | undefined> {
  const { reading, other, settings } = state;
  if (!reading || !other) return undefined;
  return postJson("/api/compare", {
    builds: [reading.source, other.source],
    settings: [settings, fitSettings(other, settings)],
    sweep: { tone: [0, 5, 10] },
    ...askedSignal(state),
  });
}

/** On request: whether anybody hears the difference, and whether two guards from one list differ as much. */
export function createListeningVerdict(store: AppStore): { element: HTMLElement } {
  const answer = h("div", { "aria-live": "polite", class: "stack" });
  const button = h("button", { type: "button" }, "Would anybody hear it?");
  button.addEventListener("click", async () => {
    button.disabled = true;
    try {
      const comparison = await ask(store);
      if (comparison)
        replaceContent(
          answer,
          h("p", { class: "verdict" }, named(comparison.verdict, "A", "B")),
          h("p", { class: "hint" }, comparison.basis),
        );
    } catch (error) {
      replaceContent(answer, h("p", { class: "fault-text" }, (error as Error).message));
    } finally {
      button.disabled = false;
    }
  });
  store.watchAny(
    (state) => [state.reading, state.other, state.settings],
    () => replaceContent(answer),
  );
  return { element: h("div", { class: "stack" }, h("div", { class: "buttons" }, button), answer) };
}
