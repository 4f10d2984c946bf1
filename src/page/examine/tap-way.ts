import type { TapsAnswer, TapsRequest } from "../../contract/measure/taps.ts";
import { h, replaceContent } from "../dom/element.ts";
import { createFormRun } from "../fields/form-run.ts";
import { ask, postJson } from "../server/client.ts";
import { captureInput } from "../sound-card/capture-input.ts";
import { createInputChoice } from "../sound-card/input-choice.ts";
import { captureMissing } from "../sound-card/open-input.ts";
import { createRecordInto } from "../sound-card/record-into.ts";
import { createRecordingSlot } from "../sound-card/recording-slot.ts";
import type { AppStore } from "../state/app-state.ts";
import { createPlanOfGuard } from "./plan-of-guard.ts";
import { createTapCues } from "./tap-cues.ts";
import { tapPlanView } from "./tap-plan-view.ts";
import { type Timing, timingFields } from "./tap-timing.ts";
import { tappedView } from "./tapped-view.ts";

/** Until the first step, for a hand to go from the mouse to the tool. */
const LEAD_SECONDS = 5;
/** After the last. */
const TAIL_SECONDS = 1;

const TOLD = "Tap as the line below says. It changes when the next row is due.";

async function askTapped(request: TapsRequest, file: File): Promise<TapsAnswer> {
  const form = new FormData();
  form.set("request", JSON.stringify(request));
  form.set("taps", file);
  return (await ask("/api/taps", { method: "POST", body: form })).json() as Promise<TapsAnswer>;
}

/** A take of taps, and how its steps are told apart. */
export interface TapTake {
  readonly file: File;
  readonly timing: Timing;
}

export interface TapWay {
  readonly element: HTMLElement;
  readonly take: () => TapTake | undefined;
}

/** Tapping every row of poles in every position in one take, and the map that comes of it. */
export function createTapWay(store: AppStore, lock: (isBusy: boolean) => void): TapWay {
  const timing = timingFields();
  const input = createInputChoice();
  const slot = createRecordingSlot({ name: "taps", label: "All taps in one take" });
  /** A recording of the page's own began when the page says, whatever is chosen for files. */
  let own: { readonly file: File | undefined } | undefined;
  const plan = createPlanOfGuard(
    store,
    async (build) => {
      const answer = await postJson("/api/taps", { build });
      if (answer.kind !== "plan") throw new Error("The service gave no plan.");
      return answer;
    },
    (answer) => {
      replaceContent(run.answer);
      return tapPlanView(answer);
    },
  );
  const cues = createTapCues(LEAD_SECONDS);
  const recordInto = createRecordInto(
    {
      told: TOLD,
      beside: cues.element,
      record: (stop, progress) => {
        const planned = plan.plan();
        if (!planned) throw new Error("The plan is not there yet.");
        const seconds = LEAD_SECONDS + planned.seconds + TAIL_SECONDS;
        return captureInput({ deviceId: input.read(), seconds }, stop, (peaks, share) => {
          progress(peaks, share);
          cues.show(planned.steps, share * seconds);
        });
      },
      done: async () => {
        own = { file: slot.file };
        await input.list();
      },
    },
    (isBusy) => {
      lock(isBusy);
      slot.record.disabled = isBusy;
      run.button.disabled = isBusy;
    },
  );
  const take = (): TapTake | undefined => {
    const { file } = slot;
    if (!file) return undefined;
    const isOwn = own !== undefined && own.file === file;
    return { file, timing: isOwn ? { by: "plan", start: LEAD_SECONDS } : timing.read() };
  };
  slot.record.addEventListener("click", () => void recordInto(slot));
  const run = createFormRun(
    "What sounds where?",
    () => [...timing.fields, slot],
    async () => {
      const { reading } = store.state;
      const made = take();
      if (!reading || !made) throw new Error("Record the taps, or bring their file.");
      const answer = await askTapped({ build: reading.source, timing: made.timing }, made.file);
      return answer.kind === "tapped" ? tappedView(answer) : undefined;
    },
  );
  const missing = captureMissing();
  const element = h(
    "div",
    { class: "stack" },
    plan.element,
    h("h4", {}, "Record, or bring a WAV file"),
    missing !== undefined && h("p", { class: "fault-text" }, missing),
    h(
      "div",
      { class: "field-row" },
      input.element,
      timing.fields.map(({ element }) => element),
    ),
    h("div", { class: "recording-slots" }, slot.element),
    h("div", { class: "buttons" }, run.button),
    run.answer,
  );
  return { element, take };
}
