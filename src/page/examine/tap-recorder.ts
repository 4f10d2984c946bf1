import { louderChannel } from "../../audio/louder-channel.ts";
import type { TapPlanAnswer } from "../../contract/measure/taps.ts";
import { captureInput } from "../sound-card/capture-input.ts";
import type { createInputChoice } from "../sound-card/input-choice.ts";
import type { Recorder } from "../sound-card/record-into.ts";
import type { PlanOfGuard } from "./plan-of-guard.ts";
import { createTapCues } from "./tap-cues.ts";

/** Until the first step, for a hand to go from the mouse to the tool. */
export const LEAD_SECONDS = 5;
/** After the last. */
const TAIL_SECONDS = 1;
/** Minutes at an interface's highest rate, or of two channels, are more than the service takes; taps have nothing up there. */
const RATES_HZ = [44_100, 48_000];

const TOLD = "Tap as the line below says. It changes when the next row is due.";

/** Says what to tap while it records. @param done told once something was recorded */
export function tapRecorder(
  plan: PlanOfGuard<TapPlanAnswer>,
  input: ReturnType<typeof createInputChoice>,
  done: () => void,
): Recorder {
  const cues = createTapCues(LEAD_SECONDS);
  return {
    told: TOLD,
    beside: cues.element,
    until: plan.until,
    record: async (stop, progress) => {
      const { steps, seconds: planned } = plan.plan();
      const seconds = LEAD_SECONDS + planned + TAIL_SECONDS;
      const wanted = { deviceId: input.read(), seconds, rates: RATES_HZ };
      const { sampleRateHz, channels } = await captureInput(wanted, stop, (peaks, share) => {
        progress(peaks, share);
        cues.show(steps, share * seconds);
      });
      return { sampleRateHz, channels: [louderChannel(channels)] };
    },
    done: async () => {
      done();
      await input.list();
    },
  };
}
