import { h, replaceContent } from "../dom/element.ts";
import type { AudioRoom } from "../listen/audio-room.ts";
import { createThroughWords } from "../listen/chain/through-words.ts";
import { Deck } from "../listen/deck.ts";
import type { Listening } from "../listen/listening.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Candidate } from "./candidate.ts";
import { resultOf } from "./result.ts";
import { createRunningTest } from "./running-test.ts";
import { createSlots } from "./slots.ts";
import { Trials } from "./trials.ts";
import { createTrialsField } from "./trials-field.ts";

/** X is A or B: can you hear which? Any two settings, of one build or two. */
export function createBlindPanel(store: AppStore, room: AudioRoom, listening: Listening): HTMLElement {
  const slots = createSlots(store);
  const count = createTrialsField();
  const stage = h("div", { class: "stage" });
  const setup = h("div", { class: "stack" });
  let deck: Deck | undefined;

  const finish = (trials: Trials) => {
    setup.hidden = false;
    replaceContent(stage, resultOf(trials));
  };
  const begin = async (a: Candidate, b: Candidate, trialCount: number) => {
    listening.stop();
    await room.context.resume();
    // Both are ready before the first trial, so that no waiting gives a side away.
    const [soundA, soundB] = await Promise.all([a, b].map((each) => room.soundOf(each.reading, each.settings, true)));
    const trials = new Trials(trialCount);
    deck ??= new Deck(room.context, room.context.destination, () => undefined);
    deck.loop = true;
    setup.hidden = true;
    const running = createRunningTest(trials, { A: soundA!, B: soundB! }, deck, () => finish(trials));
    const giveUp = h("button", { type: "button", class: "quiet" }, "Stop the test");
    giveUp.addEventListener("click", () => {
      deck?.stop();
      setup.hidden = false;
      replaceContent(stage);
    });
    replaceContent(stage, running, giveUp);
    running.querySelector("button")?.focus();
  };
  const start = h("button", { type: "button", class: "primary" }, "Begin the blind test");
  start.addEventListener("click", async () => {
    const [a, b] = slots.take();
    const trialCount = count.read();
    if (!a || !b || trialCount === undefined) return;
    start.disabled = true;
    replaceContent(stage, h("p", { role: "status" }, "Rendering both, at the same loudness…"));
    try {
      await begin(a, b, trialCount);
    } catch (error) {
      replaceContent(stage, h("p", { class: "fault-text", role: "alert" }, (error as Error).message));
    } finally {
      start.disabled = false;
    }
  });
  replaceContent(
    setup,
    h(
      "p",
      { class: "hint" },
      "X is A or B, drawn by lot for every trial. Both play at the same loudness and switch at the same place. Begin at a low volume.",
    ),
    createThroughWords(store),
    slots.element,
    h("div", { class: "row add-row" }, count.element, start),
  );
  return h("div", { class: "stack blind" }, setup, stage);
}
