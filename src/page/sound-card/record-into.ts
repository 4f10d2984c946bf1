import { encodeWav } from "../../audio/wav-encode.ts";
import { h, replaceContent } from "../dom/element.ts";
import { recordSignal } from "./record-signal.ts";
import { createRecordingMonitor } from "./recording-monitor.ts";
import type { RecordingSlot } from "./recording-slot.ts";
import type { SoundFields } from "./sound-fields.ts";

const STOPPED = new Error("Stopped: nothing of it was kept.");
const ONE_CHANNEL =
  "Only one channel came in, and two are needed. Choose the interface as the input; where the browser still gives one channel, record" +
  " with another program.";

function wordsOf(error: unknown): string {
  const { message } = error as Error;
  return message.endsWith(".") ? message : `${message}.`;
}

/**
 * Records into one slot at a time; what goes wrong is told where the slot is.
 * @param lock keeps the rest of the panel as it is while something is recorded
 */
export function createRecordInto(sound: SoundFields, lock: (isBusy: boolean) => void) {
  return async (slot: RecordingSlot): Promise<void> => {
    const stop = new AbortController();
    const monitor = createRecordingMonitor(() => stop.abort(STOPPED));
    const holder = h("div", {}, monitor.element);
    slot.element.append(holder);
    lock(true);
    slot.showFault(undefined);
    monitor.button.focus();
    try {
      const wanted = sound.wanted();
      const taken = await recordSignal(wanted, stop.signal, monitor.show);
      if (slot.isStereo && taken.channels.length < 2) throw new Error(ONE_CHANNEL);
      const file = encodeWav(taken, "pcm24");
      slot.put(new File([Uint8Array.from(file)], `${slot.name}.wav`, { type: "audio/wav" }), wanted.decibels);
      await sound.listInputs();
      holder.remove();
    } catch (error) {
      replaceContent(holder, h("p", { class: "fault-text", role: "alert" }, wordsOf(error)));
      slot.record.addEventListener("click", () => holder.remove(), { once: true });
    } finally {
      lock(false);
      slot.record.focus();
    }
  };
}
