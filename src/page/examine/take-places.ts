import type { PlannedTakeAnswer } from "../../contract/examine/examine-answer.ts";
import { h, replaceContent } from "../dom/element.ts";
import { createRecordingSlot, type RecordingSlot } from "../sound-card/recording-slot.ts";

/** A take to make, and where its recording goes. */
export interface Take {
  readonly planned: PlannedTakeAnswer;
  readonly slot: RecordingSlot;
}

function takeItem({ planned, slot }: Take): HTMLElement {
  slot.element.prepend(h("p", { class: "hint" }, `${planned.instruction} It tells ${planned.why}.`));
  return slot.element;
}

/** The places of the takes that are planned, and of those that come to it. */
export function createTakePlaces() {
  const element = h("div", { class: "recording-slots" });
  let takes: Take[] = [];
  return {
    element,
    takes: (): readonly Take[] => takes,
    clear: () => {
      takes = [];
      replaceContent(element);
    },
    add: (planned: PlannedTakeAnswer): Take => {
      const name = `take${takes.length + 1}`;
      const slot = createRecordingSlot({ name, label: planned.title, isStereo: true, isOptional: true });
      const take = { planned, slot };
      takes.push(take);
      element.append(takeItem(take));
      return take;
    },
  };
}
