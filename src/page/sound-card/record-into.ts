import type { Sound } from "../../audio/sound.ts";
import { encodeWav } from "../../audio/wav-encode.ts";
import { h, replaceContent } from "../dom/element.ts";
import { whenFolded } from "../dom/folds.ts";
import type { Progress } from "./capture-input.ts";
import { recordSignal } from "./record-signal.ts";
import { createRecordingMonitor } from "./recording-monitor.ts";
import type { RecordingSlot } from "./recording-slot.ts";
import type { SoundFields } from "./sound-fields.ts";

const STOPPED = new Error("Stopped: nothing of it was kept.");
const ONE_CHANNEL =
  "Only one channel came in, and two are needed. Choose the interface as the input; where the browser still gives one channel, record" +
  " with another program.";
const SIGNAL_TOLD = "The signal plays three times, 16 seconds in all. Touch nothing.";

function wordsOf(error: unknown): string {
  const { message } = error as Error;
  return message.endsWith(".") ? message : `${message}.`;
}

/** Work goes on where it is, or in the place that opened as this one was filled. */
function goOnFrom({ element, record }: RecordingSlot): void {
  const next = element.parentElement?.querySelector<HTMLElement>(".recording-slot[open] button");
  (element.open ? record : (next ?? element.querySelector("summary")))?.focus();
}

/** One way to record. */
export interface Recorder {
  /** What is said while it does. */
  readonly told: string;
  /** What else is seen meanwhile. */
  readonly beside?: HTMLElement;
  record(stop: AbortSignal, progress: Progress): Promise<Sound>;
  /** Aborted, with why, once what is being recorded is of no use any more. */
  until?(): AbortSignal;
  /** Of the output, re full scale, where something was played. */
  decibels?(): number;
  /** Once something was recorded. */
  done(): Promise<void>;
}

/** Plays the measuring signal meanwhile. */
export const signalRecorder = (sound: SoundFields): Recorder => ({
  told: SIGNAL_TOLD,
  record: (stop, progress) => recordSignal(sound.wanted(), stop, progress),
  decibels: () => sound.wanted().decibels,
  done: sound.listInputs,
});

/**
 * Records into one slot at a time; what goes wrong is told where the slot is.
 * @param lock keeps the rest of the panel as it is while something is recorded
 */
export function createRecordInto(recorder: Recorder, lock: (isBusy: boolean) => void) {
  return async (slot: RecordingSlot): Promise<void> => {
    const stop = new AbortController();
    const monitor = createRecordingMonitor(recorder.told, () => stop.abort(STOPPED));
    const signals = [stop.signal, ...(recorder.until ? [recorder.until()] : [])];
    // Nobody sees there that the input is still open.
    const endWatch = whenFolded(slot.element, () => stop.abort(STOPPED));
    const holder = h("div", {}, monitor.element, recorder.beside);
    slot.element.append(holder);
    lock(true);
    slot.showFault(undefined);
    monitor.button.focus();
    const decibels = recorder.decibels?.();
    try {
      const taken = await recorder.record(AbortSignal.any(signals), monitor.show);
      if (slot.isStereo && taken.channels.length < 2) throw new Error(ONE_CHANNEL);
      const file = encodeWav(taken, "pcm24");
      slot.put(new File([Uint8Array.from(file)], `${slot.name}.wav`, { type: "audio/wav" }), decibels);
      await recorder.done();
      holder.remove();
    } catch (error) {
      replaceContent(holder, h("p", { class: "fault-text", role: "alert" }, wordsOf(error)));
      slot.record.addEventListener("click", () => holder.remove(), { once: true });
    } finally {
      endWatch();
      lock(false);
      goOnFrom(slot);
    }
  };
}
