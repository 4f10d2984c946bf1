import type { ExamineAnswer, PlanAnswer } from "../../contract/examine/examine-answer.ts";
import type { ExamineRequest } from "../../contract/examine/examine-request.ts";
import { ask, postJson } from "../server/client.ts";
import type { RecordingSlot } from "../sound-card/recording-slot.ts";
import type { Take } from "./take-places.ts";
import type { TapTake } from "./tap-way.ts";

export async function askJackPlan(build: ExamineRequest["build"]): Promise<PlanAnswer> {
  const answer = await postJson("/api/examine", { build });
  if (answer.kind !== "plan") throw new Error("The service gave no plan.");
  return answer;
}

const takeOf = ({ planned: { settings, through, title }, slot }: Take) => ({
  file: slot.name,
  settings,
  through,
  label: title,
});

/** What was recorded, each under the form's field that it goes in. */
export interface Recorded {
  readonly takes: readonly Take[];
  readonly gain: RecordingSlot;
  readonly taps: TapTake | undefined;
}

/** @throws ServiceProblem naming the field or the file at fault */
export async function askExamined(
  request: Omit<ExamineRequest, "takes" | "taps">,
  { takes, gain, taps }: Recorded,
): Promise<ExamineAnswer> {
  const whole: ExamineRequest = {
    ...request,
    takes: takes.map(takeOf),
    ...(taps ? { taps: { timing: taps.timing } } : {}),
  };
  const form = new FormData();
  form.set("request", JSON.stringify(whole));
  for (const { name, file } of [gain, ...takes.map(({ slot }) => slot)]) if (file) form.set(name, file);
  if (taps) form.set("taps", taps.file);
  return (await ask("/api/examine", { method: "POST", body: form })).json() as Promise<ExamineAnswer>;
}
