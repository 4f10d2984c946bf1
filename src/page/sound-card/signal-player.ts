import { h } from "../dom/element.ts";
import { whenFolded } from "../dom/folds.ts";
import { contextAt } from "./context-at.ts";
import { RATES_HZ } from "./measuring-signal.ts";
import { type Played, signalFor } from "./play-signal.ts";

const PLAY = "Play the signal";
const STOP = "Stop the signal";

/** Plays it to its end, or until it is stopped. */
async function playThrough(played: Played, stop: AbortSignal): Promise<void> {
  const context = await contextAt(RATES_HZ);
  try {
    const play = await signalFor(context, played);
    await context.resume();
    if (stop.aborted) return;
    const player = play(0);
    await new Promise<void>((resolve) => {
      player.onended = () => resolve();
      stop.addEventListener("abort", () => resolve(), { once: true });
    });
  } finally {
    await context.close();
  }
}

/** A button that plays the measuring signal alone, and stops it again; and what it has to say. */
export function createSignalPlayer(played: () => Played) {
  const button = h("button", { type: "button" }, PLAY);
  const told = h("span", { role: "status" });
  let playing: AbortController | undefined;
  const stop = () => playing?.abort();
  const run = async () => {
    playing = new AbortController();
    button.textContent = STOP;
    told.className = "hint";
    told.textContent = "Playing: three passes, 16 seconds in all.";
    // Nobody sees there what it is that sounds.
    const endWatch = whenFolded(button, stop);
    try {
      await playThrough(played(), playing.signal);
      told.textContent = "";
    } catch (error) {
      told.className = "fault-text";
      told.textContent = (error as Error).message;
    } finally {
      endWatch();
      playing = undefined;
      button.textContent = PLAY;
    }
  };
  button.addEventListener("click", () => (playing ? stop() : void run()));
  /** Nothing else is to sound while something is recorded. */
  const lock = (isBusy: boolean) => {
    if (isBusy) stop();
    button.disabled = isBusy;
  };
  return { button, told, lock };
}
