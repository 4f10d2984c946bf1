import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { h, replaceContent } from "../dom/element.ts";
import { createFormRun } from "../fields/form-run.ts";
import { createRecordInto, signalRecorder } from "../sound-card/record-into.ts";
import { createRecordSection } from "../sound-card/record-section.ts";
import { createRecordingSlot, type RecordingSlot } from "../sound-card/recording-slot.ts";
import { createSoundFields } from "../sound-card/sound-fields.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";
import { speechOf } from "../words/lug-speech.ts";
import { examinedView } from "./examined-view.ts";
import { askExamined, askJackPlan } from "./jack-request.ts";
import { createPlanOfGuard } from "./plan-of-guard.ts";
import type { ReadBeside } from "./read-beside.ts";
import { rigFields } from "./rig-fields.ts";
import { createTakePlaces } from "./take-places.ts";
import type { TapTake } from "./tap-way.ts";

const INTRO =
  "The signal goes through a known resistor into the guard's jack, and both sides of the resistor are recorded. Make as many of these" +
  " takes as you like, the first ones first: each tells more. What you typed in above, by meter, and a take of taps are weighed" +
  " together with them.";

/** Beside the usual ones. Common practice, no source. */
const UNTOUCHED = "Let nobody touch the strings or the metal while it records.";

/** What else is known of the guard, and weighed together. */
interface Beside {
  readonly measured: ReadBeside;
  readonly taps: () => TapTake | undefined;
}

const listOf = (texts: readonly string[]) =>
  h(
    "ul",
    {},
    texts.map((text) => h("li", {}, text)),
  );

/**
 * Recordings through a resistor into the jack, and what departs from the drawing.
 * @param within what is seen where this can be
 */
export function createJackWay(
  store: AppStore,
  within: HTMLElement,
  beside: Beside,
  lock: (isBusy: boolean) => void,
): HTMLElement {
  const sound = createSoundFields();
  const rig = rigFields();
  const gain = createRecordingSlot({
    name: "gain",
    isStereo: true,
    label: "Both inputs on one point",
    isOptional: true,
  });
  const lockAll = (isBusy: boolean) => {
    lock(isBusy);
    run.button.disabled = isBusy;
    for (const { record } of [gain, ...places.takes().map(({ slot }) => slot)]) record.disabled = isBusy;
  };
  const recordInto = createRecordInto({ ...signalRecorder(sound), until: () => plan.until() }, lockAll);
  const withRecording = (slot: RecordingSlot) => slot.record.addEventListener("click", () => void recordInto(slot));
  const places = createTakePlaces(withRecording, (text) => {
    const { reading } = store.state;
    return reading ? speechOf(reading).say(text) : text;
  });
  withRecording(gain);
  const plan = createPlanOfGuard(store, {
    within,
    ask: askJackPlan,
    show: ({ takes: planned, needs }) => {
      places.renew(planned);
      return h("div", { class: "stack" }, h("h4", {}, "What you need"), listOf(needs), h("p", {}, UNTOUCHED));
    },
    changed: (isOther) => {
      replaceContent(run.answer);
      if (isOther) places.clear();
    },
  });
  const view = (answer: ExaminedAnswer, reading: Reading) => {
    const { nextTake: next } = answer;
    const addNext = () => {
      const take = next && places.placeOf(next);
      take?.slot.element.scrollIntoView({ block: "center" });
      take?.slot.record.focus();
    };
    const called = (file: string) =>
      places.takes().find(({ slot }) => slot.name === file)?.planned.title ?? "Both inputs on one point";
    const hasRoom = next !== null && places.hasRoomFor(next);
    return examinedView(answer, reading, speechOf(reading), hasRoom ? addNext : undefined, called);
  };
  const run = createFormRun(
    "Hold it to the drawing",
    () => [...rig.fields, ...sound.fields, gain, ...places.takes().map(({ slot }) => slot)],
    async () => {
      const { reading } = store.state;
      plan.plan();
      const takes = places.takes().filter(({ slot }) => slot.file !== undefined);
      if (!reading || takes.length === 0) throw new Error("Record at least one take, or bring its file.");
      const request = { build: reading.source, signal: sound.kind(), rig: rig.read(), ...beside.measured() };
      const answer = await plan.during(askExamined(request, { takes, gain, taps: beside.taps() }));
      return answer.kind === "examined" ? view(answer, reading) : undefined;
    },
  );
  return h(
    "div",
    { class: "stack" },
    h("p", {}, INTRO),
    plan.element,
    h("h4", {}, "What is known"),
    h(
      "div",
      { class: "field-row" },
      rig.fields.map(({ element }) => element),
    ),
    createRecordSection(sound, h("div", { class: "stack" }, places.element, gain.element)),
    h("div", { class: "buttons" }, run.button),
    run.answer,
  );
}
