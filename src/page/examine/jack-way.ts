import type { ExamineAnswer, ExaminedAnswer } from "../../contract/examine/examine-answer.ts";
import type { ExamineRequest } from "../../contract/examine/examine-request.ts";
import { h, replaceContent } from "../dom/element.ts";
import { createFormRun } from "../fields/form-run.ts";
import { ask, postJson } from "../server/client.ts";
import { createRecordInto, signalRecorder } from "../sound-card/record-into.ts";
import { createRecordSection } from "../sound-card/record-section.ts";
import { createRecordingSlot, type RecordingSlot } from "../sound-card/recording-slot.ts";
import { createSoundFields } from "../sound-card/sound-fields.ts";
import type { AppStore } from "../state/app-state.ts";
import { speechOf } from "../words/lug-speech.ts";
import { examinedView } from "./examined-view.ts";
import { createPlanOfGuard } from "./plan-of-guard.ts";
import type { ReadBeside } from "./read-beside.ts";
import { rigFields } from "./rig-fields.ts";
import { createTakePlaces } from "./take-places.ts";
import type { TapTake } from "./tap-way.ts";

const INTRO =
  "The signal goes through a known resistor into the guard's jack, and both sides of the resistor are recorded. Make as many of these" +
  " takes as you like, the first ones first: each tells more. What you typed in above, by meter, and a take of taps are weighed" +
  " together with them.";

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

async function askExamined(
  request: ExamineRequest,
  files: readonly (readonly [string, File])[],
): Promise<ExamineAnswer> {
  const form = new FormData();
  form.set("request", JSON.stringify(request));
  for (const [name, file] of files) form.set(name, file);
  return (await ask("/api/examine", { method: "POST", body: form })).json() as Promise<ExamineAnswer>;
}

/** Recordings through a resistor into the jack, and what departs from the drawing. */
export function createJackWay(store: AppStore, beside: Beside, lock: (isBusy: boolean) => void): HTMLElement {
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
  const recordInto = createRecordInto(signalRecorder(sound), lockAll);
  const withRecording = (slot: RecordingSlot) => slot.record.addEventListener("click", () => void recordInto(slot));
  const places = createTakePlaces(withRecording, (text) => {
    const { reading } = store.state;
    return reading ? speechOf(reading).say(text) : text;
  });
  withRecording(gain);
  const plan = createPlanOfGuard(
    store,
    async (build) => {
      const answer = await postJson("/api/examine", { build });
      if (answer.kind !== "plan") throw new Error("The service gave no plan.");
      return answer;
    },
    ({ takes: planned, needs, cautions }) => {
      places.renew(planned);
      replaceContent(run.answer);
      return h(
        "div",
        { class: "stack" },
        h("h4", {}, "What you need"),
        listOf(needs),
        h("div", { class: "caution" }, listOf(cautions)),
      );
    },
  );
  const view = (answer: ExaminedAnswer) => {
    const { reading } = store.state;
    if (!reading) return undefined;
    const next = answer.nextTake;
    const addNext = () => {
      if (!next) return;
      const take = places.takes().find(({ planned }) => planned.title === next.title) ?? places.add(next);
      take.slot.element.scrollIntoView({ block: "center" });
      take.slot.record.focus();
    };
    return examinedView(answer, reading, speechOf(reading), addNext, (file) => {
      const take = places.takes().find(({ slot }) => slot.name === file);
      return take?.planned.title ?? "Both inputs on one point";
    });
  };
  const run = createFormRun(
    "Hold it to the drawing",
    () => [...rig.fields, ...sound.fields, gain, ...places.takes().map(({ slot }) => slot)],
    async () => {
      const { reading } = store.state;
      const made = places.takes().filter(({ slot }) => slot.file !== undefined);
      if (!reading || made.length === 0) throw new Error("Record at least one take, or bring its file.");
      const taps = beside.taps();
      const request: ExamineRequest = {
        build: reading.source,
        signal: sound.kind(),
        rig: rig.read(),
        takes: made.map(({ planned: { settings, through, title }, slot }) => ({
          file: slot.name,
          settings,
          through,
          label: title,
        })),
        ...(taps ? { taps: { timing: taps.timing } } : {}),
        ...beside.measured(),
      };
      const files = [gain, ...made.map(({ slot }) => slot)].flatMap(({ name, file }) =>
        file ? [[name, file] as [string, File]] : [],
      );
      if (taps) files.push(["taps", taps.file]);
      const answer = await askExamined(request, files);
      return answer.kind === "examined" ? view(answer) : undefined;
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
