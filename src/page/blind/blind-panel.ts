import { freshId, h, replaceContent } from "../dom/element.ts";
import type { AudioRoom } from "../listen/audio-room.ts";
import { Deck } from "../listen/deck.ts";
import type { Listening } from "../listen/listening.ts";
import type { AppStore } from "../state/app-state.ts";
import { type Candidate, candidateText, fromBench, usualSecond } from "./candidate.ts";
import { resultOf } from "./result.ts";
import { createRunningTest } from "./running-test.ts";
import { Trials } from "./trials.ts";

const LEAST_TRIALS = 10;
const USUAL_TRIALS = 12;
const MOST_TRIALS = 50;

interface Slot {
  readonly element: HTMLElement;
  take(): Candidate | undefined;
}

function createSlot(store: AppStore, name: string, usual: () => Candidate | undefined): Slot {
  let chosen: Candidate | undefined;
  const text = h("p", { class: "candidate" });
  const show = () => {
    const candidate = chosen ?? usual();
    text.textContent = candidate ? candidateText(candidate) : "nothing yet";
  };
  const take = h("button", { type: "button" }, "Take what is set now");
  take.addEventListener("click", () => {
    chosen = fromBench(store.state);
    show();
  });
  store.watchAny((state) => [state.reading, state.settings, state.other], show);
  return { element: h("div", { class: "slot" }, h("h3", {}, name), text, take), take: () => chosen ?? usual() };
}

function trialsField(): { element: HTMLElement; read: () => number } {
  const id = freshId("trials");
  const input = h("input", { id, type: "number", min: LEAST_TRIALS, max: MOST_TRIALS, value: USUAL_TRIALS });
  const read = () => Math.max(LEAST_TRIALS, Math.min(MOST_TRIALS, Math.round(Number(input.value)) || USUAL_TRIALS));
  return { element: h("div", { class: "field" }, h("label", { for: id }, "Trials, at least 10"), input), read };
}

/** X is A or B: can you hear which? Any two settings, of one build or two. */
export function createBlindPanel(store: AppStore, room: AudioRoom, listening: Listening): HTMLElement {
  const first = createSlot(store, "A", () => fromBench(store.state));
  const second = createSlot(store, "B", () => usualSecond(store.state));
  const count = trialsField();
  const stage = h("div", { class: "stage" });
  const setup = h("div", { class: "stack" });
  let deck: Deck | undefined;

  const finish = (trials: Trials) => {
    setup.hidden = false;
    replaceContent(stage, resultOf(trials));
  };
  const begin = async (a: Candidate, b: Candidate) => {
    listening.stop();
    await room.context.resume();
    // Both are ready before the first trial, so that no waiting gives a side away.
    const [soundA, soundB] = await Promise.all([a, b].map((each) => room.soundOf(each.reading, each.settings, true)));
    const trials = new Trials(count.read());
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
    const [a, b] = [first.take(), second.take()];
    if (!a || !b) return;
    start.disabled = true;
    replaceContent(stage, h("p", { role: "status" }, "Rendering both, at the same loudness…"));
    try {
      await begin(a, b);
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
    h("div", { class: "slots" }, first.element, second.element),
    h("div", { class: "row add-row" }, count.element, start),
  );
  return h("div", { class: "stack blind" }, setup, stage);
}
