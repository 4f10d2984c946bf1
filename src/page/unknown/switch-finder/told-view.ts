import type { BeepTold } from "../../../bench/switch-finder/question.ts";
import type { SwitchAnswer } from "../../../contract/bench/switch-finder.ts";
import { listed } from "../../../english.ts";
import { h } from "../../dom/element.ts";
import { plainTable } from "../../dom/table.ts";

type Groups = SwitchAnswer["joined"];

const groupText = (groups: Groups[number], none: string) =>
  groups.length === 0 ? none : groups.map((group) => group.join(" – ")).join(", ");

/** Which lugs each position joins. @param none what to say of a position without any */
export function positionsTable(caption: string, positions: Groups, none = "nothing"): HTMLElement {
  return plainTable(
    caption,
    ["Position", "Joined"],
    positions.map((groups, index) => [String(index + 1), groupText(groups, none)]),
  );
}

function heardText({ positions, betweenPositions, beeps }: BeepTold): string {
  if (betweenPositions) return `${beeps ? "beeps" : "silent"} between positions ${listed(betweenPositions)}`;
  return positions?.length ? `beeps in ${listed(positions)}` : "silent";
}

/** All that was heard so far, what cannot all be right marked. */
export function heardList(beeps: readonly BeepTold[], { contradictions }: SwitchAnswer): HTMLElement {
  const doubtful = new Set(contradictions.map(({ beep }) => beep));
  return h(
    "details",
    {},
    h("summary", {}, `What was heard: ${beeps.length} ${beeps.length === 1 ? "touch" : "touches"}`),
    h(
      "ol",
      { class: "told" },
      beeps.map((told, index) =>
        h(
          "li",
          { class: doubtful.has(index) ? "fault-text" : undefined },
          `${told.between.join(" and ")}: ${heardText(told)}${doubtful.has(index) ? " (cannot all be right)" : ""}`,
        ),
      ),
    ),
  );
}
