import type { Build } from "../../build-file/schema.ts";
import { TAPS_FILE, type TapsBody } from "../../contract/measure/taps.ts";
import { faultAt } from "../../errors.ts";
import { MAX_TAP_SECONDS } from "../../limits.ts";
import { type HeardTap, hearTaps } from "../../measure/taps/hear-taps.ts";
import { planTaps, type TapStep } from "../../measure/taps/plan-taps.ts";
import { type TapInput, USUAL_TAP_INPUT } from "../../measure/taps/tap-transfers.ts";
import type { TapTiming } from "../../measure/taps/tap-windows.ts";
import type { JobContext } from "../work/job.ts";
import { recordedAs } from "./measure-files.ts";

type How = Pick<TapsBody, "timing" | "input">;

export const tapInputOf = ({ input }: How): TapInput => ({
  resistance: input?.resistance ?? USUAL_TAP_INPUT.resistance,
  capacitance: input?.capacitance ?? USUAL_TAP_INPUT.capacitance,
});

function timingOf({ timing }: How, steps: readonly TapStep[], path: string): TapTiming {
  if (timing.by === "plan") return timing.start === undefined ? { by: "plan" } : { by: "plan", start: timing.start };
  if (timing.by === "hand" && timing.times.length !== steps.length) {
    const message = `has ${timing.times.length} times; expected ${steps.length}, one for each step of the plan`;
    throw faultAt("REQUEST_INVALID", `${path}.times`, message);
  }
  return timing;
}

/**
 * What a file of taps holds, step by step of the guard's own plan.
 * @param path of the timing in the request
 * @throws REQUEST_INVALID or DATA_INSUFFICIENT naming the field or the file at fault
 */
export function tapsHeard(build: Build, how: How, file: Uint8Array, path: string, context: JobContext): HeardTap[] {
  const steps = planTaps(build, tapInputOf(how));
  const timing = timingOf(how, steps, path);
  return hearTaps(recordedAs(TAPS_FILE, { [TAPS_FILE]: file }, 1, MAX_TAP_SECONDS), steps, timing, context);
}
