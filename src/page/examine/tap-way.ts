import type { TapPlanAnswer, TapsAnswer, TapsRequest } from "../../contract/measure/taps.ts";
import { h, replaceContent } from "../dom/element.ts";
import { plainTable } from "../dom/table.ts";
import { formChoice, formText } from "../fields/form-fields.ts";
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
import { tappedView } from "./tapped-view.ts";

/** Until the first step, for a hand to go from the mouse to the tool. */
const LEAD_SECONDS = 5;
/** After the last. */
const TAIL_SECONDS = 1;

const TIMINGS = [
  { value: "plan", label: "at the plan's times, counted from the first tap" },
  { value: "hand", label: "at times that I say" },
  { value: "pauses", label: "by the pauses alone: every row was heard" },
] as const;

const TOLD = "Tap as the line below says. It changes when the next row is due.";

type Timing = NonNullable<TapsRequest["timing"]>;

/** "12.5, -, 20": seconds, and what stands for no number is a row that was silent. */
const timesOf = (text: string): (number | null)[] =>
  text
    .split(/[;\s]+|,(?=\s)/)
    .filter((each) => each !== "")
    .map((each) => (/^\d/.test(each) ? Number(each.replace(",", ".")) : null));

function timingFields() {
  const by = formChoice("timing.by", "In a file, the rows were tapped", TIMINGS);
  const times = formText("timing.times", "When each step began, in seconds; - for a silent one", "", "2.5; 6.5; -; 14");
  const show = () => {
    times.element.hidden = by.read() !== "hand";
  };
  by.element.addEventListener("change", show);
  show();
  return {
    fields: [by, times],
    read: (): Timing =>
      by.read() === "hand" ? { by: "hand", times: timesOf(times.read()) } : { by: by.read() as "plan" },
  };
}

async function askTapped(request: TapsRequest, file: File): Promise<TapsAnswer> {
  const form = new FormData();
  form.set("request", JSON.stringify(request));
  form.set("taps", file);
  return (await ask("/api/taps", { method: "POST", body: form })).json() as Promise<TapsAnswer>;
}

const clock = (seconds: number) => `${Math.floor(seconds / 60)}:${String(Math.round(seconds % 60)).padStart(2, "0")}`;

function planView({ how, cautions, steps }: TapPlanAnswer): HTMLElement {
  const list = (tag: "ol" | "ul", texts: readonly string[]) =>
    h(
      tag,
      {},
      texts.map((text) => h("li", {}, text)),
    );
  const rows = steps.map(({ position, row, at }, i) => [String(i + 1), position, row, clock(at)]);
  return h(
    "div",
    { class: "stack" },
    h("div", { class: "caution" }, list("ul", cautions)),
    list("ol", how),
    h(
      "details",
      {},
      h("summary", {}, `The plan: ${steps.length} steps`),
      plainTable("What to tap, and when", ["Step", "Switch", "Row", "From the first tap"], rows),
    ),
  );
}

/** Tapping every row of poles in every position in one take, and the map that comes of it. */
export function createTapWay(store: AppStore, lock: (isBusy: boolean) => void): HTMLElement {
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
      return planView(answer);
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
  slot.record.addEventListener("click", () => void recordInto(slot));
  const run = createFormRun(
    "What sounds where?",
    () => [...timing.fields, slot],
    async () => {
      const { reading } = store.state;
      if (!reading || !slot.file) throw new Error("Record the taps, or bring their file.");
      const isOwn = own !== undefined && own.file === slot.file;
      const request: TapsRequest = {
        build: reading.source,
        timing: isOwn ? { by: "plan", start: LEAD_SECONDS } : timing.read(),
      };
      const answer = await askTapped(request, slot.file);
      return answer.kind === "tapped" ? tappedView(answer) : undefined;
    },
  );
  const missing = captureMissing();
  return h(
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
}
