import type { Guard } from "../../../shelf/guard.ts";
import { type Clash, keptBeside, takenOver } from "../../../shelf/merge.ts";
import { h } from "../../dom/element.ts";
import type { Shelf } from "../shelf.ts";
import { counted } from "./take-words.ts";

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

interface Settling {
  readonly shelf: Shelf;
  failed(error: unknown, unkept: readonly Guard[]): void;
}

interface ClashItem {
  readonly element: HTMLElement;
  /** @returns whether it was done, now or before */
  settle(choice: Choice): Promise<boolean>;
}

function clashItem({ shelf, failed }: Settling, clash: Clash): ClashItem {
  const { here, come, fields } = clash;
  const outcome = h("span", { role: "status" });
  const buttons = h("div", { class: "buttons" });
  let settling: Promise<boolean> | undefined;
  const tried = async (choice: Choice): Promise<boolean> => {
    try {
      await choice.settle(shelf, clash);
      outcome.textContent = ` ${choice.words}.`;
      buttons.remove();
      return true;
    } catch (error) {
      settling = undefined;
      failed(error, [come]);
      return false;
    }
  };
  // Pressed twice, "Keep both" would keep three.
  const settle = (choice: Choice) => {
    settling ??= tried(choice);
    return settling;
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

/** Asks what is to become of guards that are on the shelf with other content, one by one or all at once. */
export function clashList(settling: Settling, clashes: readonly Clash[]): HTMLElement | false {
  if (clashes.length === 0) return false;
  const items = clashes.map((clash) => clashItem(settling, clash));
  const settleAll = async (choice: Choice) => {
    // What could not be kept once will not fit the next time either.
    for (const item of items) if (!(await item.settle(choice))) return;
  };
  const all = CHOICES.map((choice) =>
    h("button", { type: "button", onclick: () => void settleAll(choice) }, `${choice.label}, of all`),
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
