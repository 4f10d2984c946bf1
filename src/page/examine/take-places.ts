import type { PlannedTakeAnswer } from "../../contract/examine/examine-answer.ts";
import { MAX_TAKES } from "../../limits.ts";
import { type Child, h, replaceContent } from "../dom/element.ts";
import { createRecordingSlot, type RecordingSlot } from "../sound-card/recording-slot.ts";

/** A take to make, and where its recording goes. */
export interface Take {
  readonly planned: PlannedTakeAnswer;
  readonly slot: RecordingSlot;
}

/** Two guards may call two settings alike. */
export const isSameTake = (a: PlannedTakeAnswer, b: PlannedTakeAnswer): boolean =>
  a.title === b.title && JSON.stringify([a.settings, a.through]) === JSON.stringify([b.settings, b.through]);

/** The form has a field for so many. */
const NAMES = Array.from({ length: MAX_TAKES }, (_, i) => `take${i + 1}`);

/**
 * The places of the takes that are planned, and of those that come to it.
 * @param made told of each that is new
 * @param say puts the guard's own names into words
 */
export function createTakePlaces(made: (slot: RecordingSlot) => void, say: (text: string) => Child) {
  const element = h("div", { class: "recording-slots" });
  let takes: readonly Take[] = [];
  const freeName = () => NAMES.find((name) => !takes.some(({ slot }) => slot.name === name));
  const add = (planned: PlannedTakeAnswer): Take | undefined => {
    const name = freeName();
    if (name === undefined) return undefined;
    const told = h("p", {}, say(planned.instruction), " ", h("span", { class: "hint" }, say(`Why: ${planned.why}.`)));
    const slot = createRecordingSlot({ name, label: planned.title, isStereo: true }, told);
    made(slot);
    const take = { planned, slot };
    takes = [...takes, take];
    element.append(slot.element);
    return take;
  };
  const find = (planned: PlannedTakeAnswer) => takes.find((take) => isSameTake(take.planned, planned));
  return {
    element,
    takes: () => takes,
    /** Whether it has a place, or can have one. */
    hasRoomFor: (planned: PlannedTakeAnswer) => find(planned) !== undefined || freeName() !== undefined,
    /** Its place; none where all are taken. */
    placeOf: (planned: PlannedTakeAnswer) => find(planned) ?? add(planned),
    /** Those of another plan; what was recorded for a take that is in both stays. */
    renew: (plan: readonly PlannedTakeAnswer[]) => {
      takes = takes.filter((take) => plan.some((each) => isSameTake(each, take.planned)));
      takes = plan.flatMap((planned) => find(planned) ?? add(planned) ?? []);
      replaceContent(
        element,
        takes.map(({ slot }) => slot.element),
      );
    },
    clear: () => {
      takes = [];
      replaceContent(element);
    },
  };
}
