import type { PlannedTakeAnswer } from "../../contract/examine/examine-answer.ts";
import { type Child, h, replaceContent } from "../dom/element.ts";
import { createRecordingSlot, type RecordingSlot } from "../sound-card/recording-slot.ts";

/** A take to make, and where its recording goes. */
export interface Take {
  readonly planned: PlannedTakeAnswer;
  readonly slot: RecordingSlot;
}

/** The form has a field for so many; the contract's own bound. */
const MOST = 24;

/**
 * The places of the takes that are planned, and of those that come to it.
 * @param made told of each that is new
 * @param say puts the guard's own names into words
 */
export function createTakePlaces(made: (slot: RecordingSlot) => void, say: (text: string) => Child) {
  const element = h("div", { class: "recording-slots" });
  let takes: readonly Take[] = [];
  const freeName = () => {
    const names = Array.from({ length: MOST }, (_, i) => `take${i + 1}`);
    return names.find((name) => !takes.some(({ slot }) => slot.name === name))!;
  };
  const placeFor = (planned: PlannedTakeAnswer): Take => {
    const slot = createRecordingSlot({ name: freeName(), label: planned.title, isStereo: true, isOptional: true });
    made(slot);
    const told = h("p", { class: "hint" }, say(`${planned.instruction} It tells ${planned.why}.`));
    slot.element.querySelector("label")!.after(told);
    return { planned, slot };
  };
  const add = (planned: PlannedTakeAnswer): Take => {
    const take = placeFor(planned);
    takes = [...takes, take];
    element.append(take.slot.element);
    return take;
  };
  return {
    element,
    takes: () => takes,
    add,
    /** Those of another plan; what was recorded for a take that is in both stays. */
    renew: (plan: readonly PlannedTakeAnswer[]) => {
      const before = takes;
      takes = before.filter(({ planned: { title } }) => plan.some((each) => each.title === title));
      const next = plan.map((planned) => {
        const kept = takes.find(({ planned: { title } }) => title === planned.title);
        return kept ? { planned, slot: kept.slot } : add(planned);
      });
      takes = next;
      replaceContent(
        element,
        next.map(({ slot }) => slot.element),
      );
    },
  };
}
