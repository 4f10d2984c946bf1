import { amplitudeFromDecibels } from "../../decibels.ts";
import { freshId, h } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";

/** −40 dB: a guitar straight into an interface comes out barely audible, and is turned up from there. */
const QUIET_DB = -40;
const LOUDEST_DB = 0;

/** Echo cancelling and its kin would work against a guitar as if it were a voice in a room. */
const PLAIN_INPUT = { audio: { echoCancellation: false, noiseSuppression: false, autoGainControl: false } };

async function open(store: AppStore): Promise<void> {
  try {
    const liveInput = await navigator.mediaDevices.getUserMedia(PLAIN_INPUT);
    store.set({ liveInput, liveLatencySeconds: undefined, liveGain: amplitudeFromDecibels(QUIET_DB), notice: "" });
  } catch (error) {
    store.set({ notice: `No live input: ${(error as Error).message}` });
  }
}

function close(store: AppStore): void {
  for (const track of store.state.liveInput?.getTracks() ?? []) track.stop();
  store.set({ liveInput: undefined });
}

/** Above this a player hears the guitar answer late (common practice, no source). */
const LATE_SECONDS = 0.02;

function latencyWords(seconds: number | undefined): string {
  if (seconds === undefined) return "Press play to hear it.";
  const much = seconds > LATE_SECONDS ? ", which can be felt while playing; wired headphones add the least" : "";
  return `About ${Math.round(seconds * 1000)} ms from string to ear, as far as the browser tells${much}.`;
}

/** A live instrument, only on request, with the warning it needs. */
export function createLiveInput(store: AppStore): HTMLElement {
  const id = freshId("live-level");
  const level = h("input", { id, type: "range", min: QUIET_DB, max: LOUDEST_DB, step: 1, value: QUIET_DB });
  level.addEventListener("input", () => store.set({ liveGain: amplitudeFromDecibels(Number(level.value)) }));
  const begin = h("button", { type: "button", onclick: () => void open(store) }, "Use the live input, quietly");
  const end = h("button", { type: "button", onclick: () => close(store) }, "Close the live input");
  const row = h("div", { class: "dial" }, h("label", { for: id }, "Level"), level, h("span", {}, ""));
  const told = h("p", { class: "hint", role: "status" });
  store.watch(
    (state) => [state.liveInput],
    (liveInput) => {
      begin.hidden = liveInput !== undefined;
      end.hidden = liveInput === undefined;
      row.hidden = liveInput === undefined;
      level.value = String(QUIET_DB);
    },
  );
  store.watch(
    (state) => [state.liveInput, state.liveLatencySeconds],
    (liveInput, seconds) => {
      told.textContent = liveInput ? latencyWords(seconds) : "";
    },
  );
  return h(
    "details",
    { class: "live-input" },
    h("summary", {}, "Play live through this guard"),
    h(
      "p",
      { class: "caution" },
      h("b", {}, "Use headphones. "),
      "A loudspeaker that the microphone hears howls at once (feedback) and can hurt ears and speakers. It starts very quiet; turn it up slowly. The sound stays in this browser.",
    ),
    begin,
    end,
    row,
    told,
  );
}
