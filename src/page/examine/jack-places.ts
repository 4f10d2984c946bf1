import type { PlanAnswer, PlannedTakeAnswer } from "../../contract/examine/examine-answer.ts";
import { h } from "../dom/element.ts";
import { createOneAtATime } from "../sound-card/one-at-a-time.ts";
import { createRecordingSlot, type RecordingSlot } from "../sound-card/recording-slot.ts";
import { createTakePlaces } from "./take-places.ts";

const GAIN = "Both inputs on one point";
const GAIN_HOW =
  "Clip both inputs to the output's side of the resistor and record. It takes the difference of their gains out, which else is only known" +
  " to a few per cent.";

function progressWords(done: number, all: number): string {
  if (all === 0) return "";
  if (done === 0) return `None of ${all} takes yet. The first ones tell most; nobody need make all.`;
  if (done === all) return `All ${all} takes are there.`;
  return `${done} of ${all} takes ${done === 1 ? "is" : "are"} there: hold them to the drawing now, or go on with the next.`;
}

export interface JackPlacesWanted {
  /** Told of each place that is new. */
  made(slot: RecordingSlot): void;
  /** Told when the first take is there. */
  begun(): void;
  /** Puts the guard's own names into words. */
  say: Parameters<typeof createTakePlaces>[1];
}

/** The places of all recordings at the jack: the one to make now open, the others a line each. */
export function createJackPlaces({ made, begun, say }: JackPlacesWanted) {
  const progress = h("p", { role: "status" });
  const gain = createRecordingSlot(
    { name: "gain", isStereo: true, label: GAIN, isOptional: true },
    h("p", { class: "hint" }, GAIN_HOW),
  );
  const told = () => {
    const all = places.takes();
    const done = all.filter(({ slot }) => slot.file !== undefined).length;
    progress.textContent = progressWords(done, all.length);
    return done;
  };
  const follow = (slot: RecordingSlot) => {
    made(slot);
    turns.follow(slot);
    slot.element.addEventListener("put", () => told() === 1 && begun());
  };
  const slots = () => [...places.takes().map(({ slot }) => slot), gain];
  const turns = createOneAtATime(slots);
  const places = createTakePlaces(follow, say);
  made(gain);
  turns.follow(gain);
  const renewed = () => {
    turns.openNext();
    told();
  };
  return {
    progress,
    element: h("div", { class: "stack" }, places.element, gain.element),
    gain,
    slots,
    takes: places.takes,
    hasRoomFor: places.hasRoomFor,
    renew: (plan: PlanAnswer["takes"]) => {
      places.renew(plan);
      renewed();
    },
    clear: () => {
      places.clear();
      renewed();
    },
    /** Shows where a take goes, and nothing else, as what to do now. */
    goTo: (planned: PlannedTakeAnswer) => {
      const place = places.placeOf(planned)?.slot;
      if (!place) return;
      for (const { element } of slots()) element.open = element === place.element;
      told();
      place.element.scrollIntoView({ block: "center" });
      place.record.focus();
    },
    called: (file: string) => places.takes().find(({ slot }) => slot.name === file)?.planned.title ?? GAIN,
  };
}
