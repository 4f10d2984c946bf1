import { DRIVE_DELAY_SAMPLES } from "../../../listening/drive/delay.ts";
import type { AppState } from "../../state/app-state.ts";
import { filterWay, type Way } from "../crossing.ts";

const ready = new WeakMap<BaseAudioContext, Promise<void>>();

/** Brings the amplifier's code to a context, once. @throws Error where the browser keeps it from the page */
function driveIn(context: BaseAudioContext): Promise<void> {
  const known = ready.get(context);
  if (known) return known;
  if (!context.audioWorklet) {
    throw new Error("a driven amplifier is heard live only where the page comes by https; turn its drive to 0");
  }
  const module = context.audioWorklet.addModule(new URL("./drive-worklet.js", import.meta.url).href);
  ready.set(context, module);
  module.catch(() => ready.delete(context));
  return module;
}

function driveNode(context: BaseAudioContext, drive: number): AudioWorkletNode {
  return new AudioWorkletNode(context, "drive", { numberOfInputs: 1, numberOfOutputs: 1, processorOptions: { drive } });
}

/** As late as the driven amplifier, so that all drives keep the place. */
function undrivenNode(context: BaseAudioContext): DelayNode {
  const seconds = DRIVE_DELAY_SAMPLES / context.sampleRate;
  return new DelayNode(context, { delayTime: seconds, maxDelayTime: seconds });
}

/**
 * The chosen chain for a sound that is played as it comes: the service's own amplifier and speaker.
 * @param speaker at the context's rate
 */
export async function chainWay(
  context: BaseAudioContext,
  { drive }: Pick<AppState, "drive">,
  speaker: AudioBuffer,
): Promise<Way> {
  if (drive > 0) await driveIn(context);
  const last = filterWay(context, speaker);
  const ringSeconds = last.ringSeconds + (2 * DRIVE_DELAY_SAMPLES) / context.sampleRate;
  const lateSeconds = last.lateSeconds + DRIVE_DELAY_SAMPLES / context.sampleRate;
  if (drive === 0) return { nodes: [undrivenNode(context), ...last.nodes], ringSeconds, lateSeconds };
  const amplifier = driveNode(context, drive);
  return {
    nodes: [amplifier, ...last.nodes],
    ringSeconds,
    lateSeconds,
    // Until then it would go on for nobody.
    onEnd: () => amplifier.port.postMessage("over"),
  };
}
