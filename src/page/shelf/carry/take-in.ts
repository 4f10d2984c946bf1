import type { ShelfRead } from "../../../shelf/file/read-shelf-file.ts";
import type { Guard } from "../../../shelf/guard.ts";
import { type Clash, joinedHistory, keptBeside, type Merge, mergeOf, takenOver } from "../../../shelf/merge.ts";
import { h, replaceContent } from "../../dom/element.ts";
import type { ShelfDesk } from "../desk.ts";
import type { Shelf } from "../shelf.ts";

const MAX_SHOWN = 12;

const counted = (count: number) => `${count} ${count === 1 ? "guard" : "guards"}`;

function resultWords({ added, grown, same }: Merge): string {
  const parts = [
    added.length > 0 && `${counted(added.length)} put on the shelf`,
    grown.length > 0 && `${counted(grown.length)} with more of their history`,
    same > 0 && `${counted(same)} there already`,
  ].filter(Boolean);
  return parts.length > 0 ? `${parts.join(", ")}.` : "";
}

function faultList({ faults }: ShelfRead): HTMLElement | false {
  if (faults.length === 0) return false;
  const items = faults
    .slice(0, MAX_SHOWN)
    .map(({ entry, path, message }) =>
      h("li", {}, h("b", {}, path === "" ? entry : `${entry}, ${path.replaceAll(".", " › ")}`), ` ${message}`),
    );
  const left = faults.length - MAX_SHOWN;
  return h(
    "div",
    { class: "stack", role: "alert" },
    h(
      "p",
      { class: "fault-text" },
      `${counted(faults.length)} could not be read and ${faults.length === 1 ? "was" : "were"} left out:`,
    ),
    h("ul", {}, items, left > 0 && h("li", {}, `and ${left} more`)),
  );
}

interface Choice {
  readonly label: string;
  readonly words: string;
  settle(shelf: Shelf, clash: Clash): Promise<unknown>;
}

const CHOICES: readonly Choice[] = [
  { label: "Keep both", words: "both kept", settle: (shelf, clash) => shelf.put([keptBeside(clash)]) },
  {
    label: "Take the one that came",
    words: "taken over; what it was stands in its history",
    settle: (shelf, { here, come }) => shelf.change(here.id, (now) => takenOver(now, come, new Date())),
  },
  { label: "Leave mine", words: "left as it is on the shelf", settle: async () => undefined },
];

const FIELD_WORDS: Readonly<Record<string, string>> = { file: "wiring", made: "date" };

/** Says what came in, and asks about each guard that is on the shelf with other content. */
export class TakeIn {
  readonly element = h("div", { class: "take-in stack", hidden: true });
  readonly #desk: ShelfDesk;
  readonly #failed: (error: unknown, unkept: readonly Guard[]) => void;

  constructor(desk: ShelfDesk, failed: (error: unknown, unkept: readonly Guard[]) => void) {
    this.#desk = desk;
    this.#failed = failed;
  }

  /** @param from what they came from, for the person */
  async take(read: ShelfRead, from: string): Promise<void> {
    const shelf = await this.#desk.shelf.getAll();
    const merge = mergeOf(shelf, read.guards);
    try {
      await this.#desk.shelf.put(merge.added);
      for (const { id, history } of merge.grown)
        await this.#desk.shelf.change(id, (now) => ({ ...now, history: joinedHistory(now.history, history) }));
    } catch (error) {
      this.#failed(error, merge.added);
      return;
    }
    this.#show(read, merge, from);
  }

  #show(read: ShelfRead, merge: Merge, from: string): void {
    const close = () => {
      this.element.hidden = true;
      replaceContent(this.element);
    };
    const items = merge.clashes.map((clash) => this.#clashItem(clash));
    replaceContent(
      this.element,
      h("p", { role: "status" }, `From ${from}: ${resultWords(merge) || "nothing new."}`),
      faultList(read),
      items.length > 0 && this.#clashes(items),
      h("div", { class: "buttons" }, h("button", { type: "button", class: "quiet", onclick: close }, "Close this")),
    );
    this.element.hidden = false;
  }

  #clashes(items: readonly ClashItem[]): HTMLElement {
    const all = CHOICES.map((choice) =>
      h(
        "button",
        {
          type: "button",
          onclick: async () => {
            for (const item of items) await item.settle(choice);
          },
        },
        `${choice.label}, of all`,
      ),
    );
    return h(
      "div",
      { class: "stack" },
      h("p", {}, `${counted(items.length)} ${items.length === 1 ? "is" : "are"} on the shelf with other content:`),
      items.length > 1 && h("div", { class: "buttons" }, all),
      h(
        "ul",
        { class: "clashes" },
        items.map(({ element }) => element),
      ),
    );
  }

  #clashItem(clash: Clash): ClashItem {
    const { here, fields } = clash;
    const outcome = h("span", { role: "status" });
    const buttons = h("div", { class: "buttons" });
    let isSettled = false;
    const settle = async (choice: Choice) => {
      if (isSettled) return;
      try {
        await choice.settle(this.#desk.shelf, clash);
        isSettled = true;
        outcome.textContent = ` ${choice.words}.`;
        buttons.remove();
      } catch (error) {
        this.#failed(error, [clash.come]);
      }
    };
    for (const choice of CHOICES)
      buttons.append(
        h(
          "button",
          { type: "button", "aria-label": `${choice.label}: ${here.name}`, onclick: () => void settle(choice) },
          choice.label,
        ),
      );
    const differs = fields.map((field) => FIELD_WORDS[field] ?? field).join(", ");
    return {
      element: h("li", {}, h("p", {}, h("b", {}, here.name), ` differs in ${differs}.`, outcome), buttons),
      settle,
    };
  }
}

interface ClashItem {
  readonly element: HTMLElement;
  settle(choice: Choice): Promise<void>;
}
