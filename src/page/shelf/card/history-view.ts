import { MAX_VERSIONS } from "../../../shelf/amend.ts";
import type { Guard, Version } from "../../../shelf/guard.ts";
import { h, replaceContent } from "../../dom/element.ts";
import { versionWords } from "../desk.ts";

const REASONS: Readonly<Record<Version["by"], string>> = {
  change: "before a change",
  restore: "before something was restored",
  import: "before a file or link was taken over",
  "another tab": "from another tab, before this one wrote over it",
};

const when = (at: string) => new Date(at).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" });

/** What of a version can be told in a line; a build file cannot. */
function toldWas({ was: { name, guitar, state, made, notes } }: Version): string {
  return [name, guitar, state, made, notes].filter(Boolean).join(" · ").slice(0, 160);
}

interface HistoryActions {
  restore(version: Version): void;
  /** Puts the wiring of a version on the bench, and leaves the shelf as it is. */
  look(version: Version): void;
}

function versionItem(version: Version, { restore, look }: HistoryActions): HTMLElement {
  const at = when(version.at);
  const what = versionWords(version);
  const told = toldWas(version);
  return h(
    "li",
    { class: "shelf-version" },
    h("p", {}, h("b", {}, at), `, ${REASONS[version.by]}: ${what}`, told !== "" && ` (${told})`),
    h(
      "div",
      { class: "buttons" },
      h(
        "button",
        { type: "button", "aria-label": `Restore ${what} of ${at}`, onclick: () => restore(version) },
        "Restore",
      ),
      version.was.file !== undefined &&
        h(
          "button",
          {
            type: "button",
            "aria-label": `Look at it on the bench: the wiring of ${at}`,
            onclick: () => look(version),
          },
          "Look at it",
        ),
    ),
  );
}

/** What a guard was before, newest first. */
export function createHistoryView(actions: HistoryActions): { element: HTMLElement; show(guard: Guard): void } {
  const list = h("ol", { class: "shelf-history" });
  const hint = h("p", { class: "hint" });
  const summary = h("summary", {});
  let shown: Guard["history"] | undefined;
  return {
    element: h("details", { class: "shelf-past" }, summary, hint, list),
    show: ({ history }) => {
      if (history === shown) return;
      shown = history;
      summary.textContent = `History (${history.length})`;
      hint.textContent =
        history.length === 0
          ? "Nothing yet: every wiring that is kept in the place of another one leaves that one here."
          : `The last ${MAX_VERSIONS} are kept. What is restored takes the present one's place, which then stands here itself.`;
      replaceContent(
        list,
        history.map((version) => versionItem(version, actions)),
      );
    },
  };
}
