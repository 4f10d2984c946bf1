import { chainWords } from "../../../listening/names.ts";
import { h } from "../../dom/element.ts";
import type { AppStore } from "../../state/app-state.ts";
import { heardIn } from "./asked-chain.ts";

/** A line that says what everything is heard through, for where the choice itself is out of sight. */
export function createThroughWords(store: AppStore): HTMLElement {
  const line = h("p", { class: "hint" });
  store.watch(heardIn, (heardThrough, drive, file) => {
    const cabinet = heardThrough === "own" ? file : undefined;
    line.textContent =
      heardThrough === "jack"
        ? "Heard as it comes out of the jack."
        : `Heard through a ${chainWords({ drive, cabinet })}.`;
  });
  return line;
}
