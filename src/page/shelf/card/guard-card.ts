import { restored } from "../../../shelf/amend.ts";
import type { Guard } from "../../../shelf/guard.ts";
import { withoutReadings, withReadings } from "../../../shelf/readings.ts";
import { h } from "../../dom/element.ts";
import { openBuild } from "../../start/open-build.ts";
import { parseJson } from "../../start/parse-json.ts";
import type { ShelfDesk } from "../desk.ts";
import { versionWords } from "../desk.ts";
import { saveBuildFile } from "../save-shelf.ts";
import { createCardFields } from "./card-fields.ts";
import { createCardPicture } from "./card-picture.ts";
import { createHistoryView } from "./history-view.ts";
import { createPartsView } from "./parts-view.ts";
import { createReadingsView } from "./readings-view.ts";

export interface CardActions {
  /** Leaves the card. */
  close(): void;
  open(guard: Guard): void;
  duplicate(guard: Guard): void;
  remove(guard: Guard): void;
  told(words: string): void;
  failed(error: unknown, unkept: readonly Guard[]): void;
  /** Leaves the shelf for the bench. */
  leave(): void;
}

export interface GuardCard {
  readonly element: HTMLElement;
  /** Shows it as it is kept now, but for what is being typed. */
  show(guard: Guard): void;
  /** Writes what was typed and is not written yet. */
  flush(): void;
  readonly id: string;
}

/** All that is kept of one guard. */
export function createGuardCard(desk: ShelfDesk, first: Guard, actions: CardActions): GuardCard {
  let guard = first;
  const title = h("h3", { tabindex: -1, dir: "auto" });
  const picture = createCardPicture(desk.bench);
  const dates = h("p", { class: "hint" });
  const run = async (action: () => Promise<Guard>, wanted: () => Guard, words = "") => {
    try {
      show(await action());
      actions.told(words);
    } catch (error) {
      actions.failed(error, [wanted()]);
    }
  };
  const edit = (change: (guard: Guard) => Guard, words = "") => {
    const seen = guard;
    return run(
      () => desk.edit(seen, change),
      () => change(seen),
      words,
    );
  };
  const fields = createCardFields((patch, seen) => {
    const known = guard;
    void run(
      () => desk.write(known, patch, seen),
      () => ({ ...known, ...patch }),
    );
  });
  const readings = createReadingsView({
    add: (set) => void edit((each) => withReadings(each, set, new Date())),
    remove: (id) => void edit((each) => withoutReadings(each, id, new Date()), "These readings were deleted."),
  });
  const history = createHistoryView({
    restore: (version) =>
      void edit(
        (each) => restored(each, version, new Date()),
        `Restored: ${versionWords(version)}. What it was stands in the history.`,
      ),
    look: async (version) => {
      try {
        if (await openBuild(desk.bench, parseJson(version.was.file!))) actions.leave();
      } catch (error) {
        actions.failed(error, []);
      }
    },
  });
  const parts = createPartsView(desk, (error) => actions.failed(error, []));
  function show(next: Guard): void {
    guard = next;
    title.textContent = guard.name || "no name";
    dates.textContent = `Last changed ${new Date(guard.changed).toLocaleString(undefined, { dateStyle: "medium", timeStyle: "short" })}.`;
    fields.show(guard);
    readings.show(guard);
    history.show(guard);
    parts.show(guard);
    void picture.show(guard);
  }
  const button = (text: string, onclick: () => void, cls = "") =>
    h("button", { type: "button", class: cls, onclick }, text);
  show(first);
  return {
    id: first.id,
    element: h(
      "section",
      { class: "stack shelf-card", "aria-label": "One guard" },
      h("div", { class: "buttons" }, button("Back to all guards", actions.close)),
      title,
      h(
        "div",
        { class: "card-top" },
        picture.element,
        h(
          "div",
          { class: "buttons" },
          button("Open on the bench", () => actions.open(guard), "primary"),
          button("Duplicate", () => actions.duplicate(guard)),
          button("Save its build file", () => saveBuildFile(guard)),
          button("Delete", () => actions.remove(guard)),
        ),
      ),
      fields.element,
      dates,
      parts.element,
      readings.element,
      history.element,
    ),
    show,
    flush: fields.flush,
  };
}
