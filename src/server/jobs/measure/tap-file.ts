import type { Build } from "../../../build-file/schema.ts";
import { TAPS_FILE, type TapsBody } from "../../../contract/measure/taps.ts";
import { faultAt, refused } from "../../../errors.ts";
import { MAX_TAP_SECONDS } from "../../../limits.ts";
import { type HeardTap, hearTaps } from "../../../measure/taps/hear-taps.ts";
import { type TapStep, tapPlan } from "../../../measure/taps/plan-taps.ts";
import { type TapInput, USUAL_TAP_INPUT } from "../../../measure/taps/tap-transfers.ts";
import type { TapTiming } from "../../../measure/taps/tap-windows.ts";
import type { JobContext } from "../../work/job.ts";
import { recordedAs } from "./measure-files.ts";

type How = Pick<TapsBody, "timing" | "input">;

export const tapInputOf = ({ input }: Pick<How, "input">): TapInput => ({
  resistance: input?.resistance ?? USUAL_TAP_INPUT.resistance,
  capacitance: input?.capacitance ?? USUAL_TAP_INPUT.capacitance,
});

/** Steps were tapped in the plan's order. */
function requireRising(times: readonly (number | null)[], path: string): void {
  let before = Number.NEGATIVE_INFINITY;
  const faults = times.flatMap((time, i) => {
    if (time === null || time > before) {
      before = time ?? before;
      return [];
    }
    return [
      { path: `${path}.${i}`, message: `is ${time} s; expected more than ${before} s, as of the steps before it` },
    ];
  });
  if (faults.length > 0) throw refused("REQUEST_INVALID", faults);
}

function timingOf({ timing }: How, steps: readonly TapStep[], path: string): TapTiming {
  if (timing.by === "plan") return timing.start === undefined ? { by: "plan" } : { by: "plan", start: timing.start };
  if (timing.by === "hand" && timing.times.length !== steps.length) {
    const message = `has ${timing.times.length} times; expected ${steps.length}, one for each step of the plan`;
    throw faultAt("REQUEST_INVALID", `${path}.times`, message);
  }
  if (timing.by === "hand") requireRising(timing.times, `${path}.times`);
  return timing;
}

/**
 * What a file of taps holds, step by step of the guard's own plan.
 * @param path of the timing in the request
 * @throws REQUEST_INVALID or DATA_INSUFFICIENT naming the field or the file at fault
 */
export function tapsHeard(
  build: Build,
  how: How,
  file: Uint8Array,
  path: string,
  context: JobContext,
  { steps } = tapPlan(build, tapInputOf(how), context),
): HeardTap[] {
  const timing = timingOf(how, steps, path);
  const take = recordedAs(TAPS_FILE, { [TAPS_FILE]: file }, 1, MAX_TAP_SECONDS);
  const seconds = take.channels[0]!.length / take.sampleRateHz;
  if (timing.by === "plan" && timing.start !== undefined && timing.start >= seconds) {
    const message = `is ${timing.start} s; expected less than the take's ${seconds.toFixed(1)} s`;
    throw faultAt("REQUEST_INVALID", `${path}.start`, message);
  }
  return hearTaps(take, steps, timing, context);
}
