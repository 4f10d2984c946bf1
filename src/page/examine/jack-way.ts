import type { ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import { h, replaceContent } from "../dom/element.ts";
import { createFormRun } from "../fields/form-run.ts";
import { createRecordInto, signalRecorder } from "../sound-card/record-into.ts";
import { createRecordSection } from "../sound-card/record-section.ts";
import { createSoundFields } from "../sound-card/sound-fields.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";
import { speechOf } from "../words/lug-speech.ts";
import { examinedView } from "./examined-view.ts";
import { createJackPlaces } from "./jack-places.ts";
import { askExamined, askJackPlan } from "./jack-request.ts";
import { createJackSetup } from "./jack-setup.ts";
import { createPlanOfGuard } from "./plan-of-guard.ts";
import type { ReadBeside } from "./read-beside.ts";
import { rigFields } from "./rig-fields.ts";
import type { TapTake } from "./tap-way.ts";

const INTRO =
  "The signal goes through a known resistor into the guard's jack, and both sides of the resistor are recorded, once in each setting" +
  " below. What you typed in above, by meter, and a take of taps are weighed together with the takes.";

/** What else is known of the guard, and weighed together. */
interface Beside {
  readonly measured: ReadBeside;
  readonly taps: () => TapTake | undefined;
}

const isNarrow = () => matchMedia("(max-width: 700px)").matches;

const notesOf = (notes: readonly string[]) =>
  notes.length > 0 &&
  h(
    "ul",
    { class: "hint" },
    notes.map((text) => h("li", {}, text)),
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
  const setup = createJackSetup(rig, sound);
  const lockAll = (isBusy: boolean) => {
    lock(isBusy);
    sound.player.lock(isBusy);
    run.button.disabled = isBusy;
    for (const { record } of places.slots()) record.disabled = isBusy;
  };
  const recordInto = createRecordInto({ ...signalRecorder(sound), until: () => plan.until() }, lockAll);
  const places = createJackPlaces({
    made: (slot) => slot.record.addEventListener("click", () => void recordInto(slot)),
    begun: () => {
      if (isNarrow()) setup.element.open = false;
    },
    say: (text) => {
      const { reading } = store.state;
      return reading ? speechOf(reading).say(text) : text;
    },
  });
  const plan = createPlanOfGuard(store, {
    within,
    ask: askJackPlan,
    show: (answer) => {
      places.renew(answer.takes);
      setup.show(answer);
      return notesOf(answer.notes);
    },
    changed: (isOther) => {
      replaceContent(run.answer);
      if (isOther) places.clear();
    },
  });
  const view = (answer: ExaminedAnswer, reading: Reading) => {
    const { nextTake: next } = answer;
    const goNext = next && places.hasRoomFor(next) ? () => places.goTo(next) : undefined;
    return examinedView(answer, reading, speechOf(reading), goNext, places.called);
  };
  const run = createFormRun(
    "Hold it to the drawing",
    () => [...rig.fields, ...sound.fields, ...places.slots()],
    async () => {
      const { reading } = store.state;
      plan.plan();
      const takes = places.takes().filter(({ slot }) => slot.file !== undefined);
      if (!reading || takes.length === 0) throw new Error("Record at least one take, or bring its file.");
      const request = { build: reading.source, signal: sound.kind(), rig: rig.read(), ...beside.measured() };
      const asked = askExamined(request, { takes, gain: places.gain, taps: beside.taps() });
      const answer = await plan.during(asked);
      return answer.kind === "examined" ? view(answer, reading) : undefined;
    },
  );
  return h(
    "div",
    { class: "stack" },
    h("p", {}, INTRO),
    setup.element,
    h("h4", {}, "2. Record the takes"),
    plan.element,
    createRecordSection(sound, h("div", { class: "stack" }, places.progress, places.element)),
    h("h4", {}, "3. What it is"),
    h("div", { class: "buttons" }, run.button),
    run.answer,
  );
}
