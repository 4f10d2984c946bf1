import type { TapPlanAnswer, TapsAnswer, TapsRequest } from "../../contract/measure/taps.ts";
import { h, replaceContent } from "../dom/element.ts";
import { createFormRun } from "../fields/form-run.ts";
import { ask, postJson } from "../server/client.ts";
import { createInputChoice } from "../sound-card/input-choice.ts";
import { captureMissing } from "../sound-card/open-input.ts";
import { createRecordInto } from "../sound-card/record-into.ts";
import { createRecordingSlot } from "../sound-card/recording-slot.ts";
import type { AppStore } from "../state/app-state.ts";
import { createPlanOfGuard } from "./plan-of-guard.ts";
import { createPlansOfTakes } from "./plans-of-takes.ts";
import { tapPlanView } from "./tap-plan-view.ts";
import { LEAD_SECONDS, tapRecorder } from "./tap-recorder.ts";
import { type Timing, timingFields } from "./tap-timing.ts";
import { tappedView } from "./tapped-view.ts";

async function askPlan(build: TapsRequest["build"]): Promise<TapPlanAnswer> {
  const answer = await postJson("/api/taps", { build });
  if (answer.kind !== "plan") throw new Error("The service gave no plan.");
  return answer;
}

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
  /** @throws in words where there is one of another plan */
  readonly take: () => TapTake | undefined;
}

/**
 * Tapping every row of poles in every position in one take, and the map that comes of it.
 * @param within what is seen where this can be
 */
export function createTapWay(store: AppStore, within: HTMLElement, lock: (isBusy: boolean) => void): TapWay {
  const timing = timingFields();
  const input = createInputChoice();
  const slot = createRecordingSlot({ name: "taps", label: "All taps in one take" });
  const plans = createPlansOfTakes(slot.path);
  /** A recording of the page's own began when the page says, whatever is chosen for files. */
  const own = new WeakSet<File>();
  let steps: TapPlanAnswer["steps"] | undefined;
  const plan = createPlanOfGuard(store, {
    within,
    ask: askPlan,
    show: (answer) => {
      ({ steps } = answer);
      return tapPlanView(answer);
    },
    changed: (isOther) => {
      replaceContent(run.answer);
      if (isOther) slot.put(undefined);
      else if (slot.file && steps) plans.keep(slot.file, steps);
    },
  });
  const keepOwn = () => {
    own.add(slot.file!);
    plans.keep(slot.file!, plan.plan().steps);
  };
  const recordInto = createRecordInto(tapRecorder(plan, input, keepOwn), (isBusy) => {
    lock(isBusy);
    slot.record.disabled = isBusy;
    run.button.disabled = isBusy;
  });
  slot.record.addEventListener("click", () => void recordInto(slot));
  const take = (): TapTake | undefined => {
    const { file } = slot;
    if (!file) return undefined;
    plans.require(file, plan.plan().steps);
    return { file, timing: own.has(file) ? { by: "plan", start: LEAD_SECONDS } : timing.read() };
  };
  const run = createFormRun(
    "What sounds where?",
    () => [...timing.fields, slot],
    async () => {
      const { reading } = store.state;
      const made = take();
      if (!reading || !made) throw new Error("Record the taps, or bring their file.");
      const answer = await plan.during(askTapped({ build: reading.source, timing: made.timing }, made.file));
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
