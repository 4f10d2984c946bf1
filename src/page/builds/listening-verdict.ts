import type { CompareAnswer } from "../../contract/compare.ts";
import { h, replaceContent } from "../dom/element.ts";
import { later, latestOnly, whileShown } from "../dom/later.ts";
import { WorkerLink } from "../engine/worker-link.ts";
import { askedSignal, isPhrase } from "../listen/asked-signal.ts";
import { postJson } from "../server/client.ts";
import type { AppState, AppStore } from "../state/app-state.ts";
import { fitSettings } from "../state/fit-settings.ts";
import type { AnswerDesk, HereAnswer } from "./answer-desk.ts";
import { askedSweep } from "./asked-sweep.ts";
import { named } from "./difference-words.ts";

const answers = new WorkerLink<AnswerDesk>("answer-worker");

/** What is worked out here, without the service: the sentence that answers what was changed. */
async function answerHere(state: AppState): Promise<HereAnswer | undefined> {
  const { reading, other, settings, story, hand, stringAge: strings } = state;
  if (!reading || !other) return undefined;
  return answers.ask((desk) =>
    desk.answer({
      builds: [reading.build, other.build],
      settings,
      sweep: askedSweep(reading, other, story?.sweep),
      playing: isPhrase(state) ? { hand, strings } : {},
      question: story?.question,
    }),
  );
}

async function ask({ state }: AppStore): Promise<CompareAnswer | undefined> {
  const { reading, other, settings, story } = state;
  if (!reading || !other) return undefined;
  return postJson("/api/compare", {
    builds: [reading.source, other.source],
    settings: [settings, fitSettings(other, settings)],
    sweep: askedSweep(reading, other, story?.sweep),
    question: story?.question,
    ...askedSignal(state),
  });
}

/** What the service has to say beyond the sentence above it, which is told anew only where another signal is asked about. */
function details({ verdict, answer, basis, phrase }: CompareAnswer, here: HereAnswer | undefined): HTMLElement[] {
  const words = phrase === here?.phrase ? verdict.slice(answer.length).trim() : verdict;
  return [h("p", {}, named(words, "A", "B")), h("p", { class: "hint" }, basis)];
}

const SETTLED_MS = 150;

/** The answer to what was changed, and on request the settings that differ most and whether tolerance does as much. */
export function createListeningVerdict(store: AppStore): { element: HTMLElement } {
  const sentence = h("p", { class: "verdict", "aria-live": "polite" });
  const question = h("p", { class: "hint" });
  let here: HereAnswer | undefined;
  const answer = h("div", { "aria-live": "polite", class: "stack" });
  const button = h("button", { type: "button" }, "Setting by setting, and against tolerance");
  button.addEventListener("click", async () => {
    button.disabled = true;
    try {
      const comparison = await ask(store);
      if (comparison) replaceContent(answer, ...details(comparison, here));
    } catch (error) {
      replaceContent(answer, h("p", { class: "fault-text" }, (error as Error).message));
    } finally {
      button.disabled = false;
    }
  });
  const element = h("div", { class: "stack" }, question, sentence, h("div", { class: "buttons" }, button), answer);
  const latest = latestOnly();
  const tell = whileShown(element, async () => {
    const isLatest = latest();
    const told = await answerHere(store.state).catch((error: Error) => error);
    if (!isLatest()) return;
    here = told instanceof Error ? undefined : told;
    sentence.textContent = told instanceof Error ? told.message : named(told?.answer ?? "", "A", "B");
  });
  store.watchAny(
    (state) => [state.reading, state.other, state.settings],
    () => replaceContent(answer),
  );
  store.watchAny(
    (state) => [state.reading, state.other, state.settings, state.story, state.hand, state.stringAge, state.signal],
    later(SETTLED_MS, tell),
  );
  store.watch(
    (state) => [state.story],
    (story) => {
      // Other examples ask nothing that a comparison answers.
      question.hidden = story?.sweep === undefined;
      question.textContent = story?.question ?? "";
    },
  );
  return { element };
}
