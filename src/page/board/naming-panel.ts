import { createTrialsField } from "../blind/trials-field.ts";
import { cellName } from "../cells/cell.ts";
import type { CellRooms } from "../cells/cell-rooms.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import { Deck } from "../listen/deck.ts";
import { fixedRule } from "./fixed-rule.ts";
import { namingResultOf } from "./naming-result.ts";
import { createNamingStage } from "./naming-stage.ts";
import { NamingTrials } from "./naming-trials.ts";
import { sequentialRule } from "./stopping.ts";

function endChoice(trials: HTMLElement) {
  const name = freshId("ends");
  const option = (value: string, text: string, checked: boolean) => {
    const input = h("input", { type: "radio", name, value, checked });
    input.addEventListener("change", () => {
      trials.hidden = value === "any";
    });
    return { input, element: h("label", { class: "tick" }, input, h("span", {}, text)) };
  };
  const any = option("any", "as soon as the answers say enough, 50 trials at most", true);
  const fixed = option("fixed", "after a number of trials chosen now", false);
  trials.hidden = true;
  return {
    element: h("fieldset", { class: "plain" }, h("legend", {}, "The test ends"), any.element, fixed.element),
    get isSequential() {
      return any.input.checked;
    },
  };
}

/** Which of the cells on the board is playing? Drawn by lot for every trial. */
export function createNamingPanel({ board, player, room }: CellRooms): HTMLElement {
  const count = createTrialsField();
  const ends = endChoice(count.element);
  const stage = h("div", { class: "stage" });
  const start = h("button", { type: "button", class: "primary" }, "Begin the blind test");
  const few = h("p", { class: "hint" }, "Put two cells on the board at least.");
  const setup = h(
    "div",
    { class: "stack" },
    h(
      "p",
      { class: "hint" },
      "One of the cells plays, drawn by lot anew for every trial, and you name it; nothing is told on the way. Begin at a low volume.",
    ),
    few,
    ends.element,
    h("div", { class: "row add-row" }, count.element, start),
  );
  let deck: Deck | undefined;
  const begin = async (trialCount: number) => {
    const { cells } = board;
    const { isSequential } = ends;
    player.stop();
    await room.context.resume();
    // All are ready before the first trial, so that no waiting gives one away.
    const sounds = await Promise.all(cells.map((cell) => player.sound(cell)));
    const rule = isSequential ? sequentialRule(cells.length) : fixedRule(cells.length, trialCount);
    const trials = new NamingTrials(cells.length, rule);
    deck ??= new Deck(room.context, room.context.destination, () => undefined);
    deck.loop = true;
    setup.hidden = true;
    const close = () => {
      deck?.stop();
      setup.hidden = false;
      start.focus();
    };
    const names = cells.map(cellName);
    const running = createNamingStage(
      { trials, names, sounds, deck, trialCount: isSequential ? undefined : trialCount },
      () => {
        close();
        replaceContent(stage, namingResultOf(trials, names, isSequential));
      },
    );
    const giveUp = h("button", { type: "button", class: "quiet" }, "Stop the test");
    giveUp.addEventListener("click", () => {
      close();
      replaceContent(stage);
    });
    replaceContent(stage, running, giveUp);
    running.querySelector("button")?.focus();
  };
  start.addEventListener("click", async () => {
    const trialCount = ends.isSequential ? 0 : count.read();
    if (trialCount === undefined) return;
    start.disabled = true;
    replaceContent(stage, h("p", { role: "status" }, "Rendering all, at the same loudness…"));
    try {
      await begin(trialCount);
    } catch (error) {
      replaceContent(stage, h("p", { class: "fault-text", role: "alert" }, (error as Error).message));
    } finally {
      start.disabled = board.cells.length < 2;
    }
  });
  board.watch(({ length }) => {
    start.disabled = length < 2;
    few.hidden = length >= 2;
    // Other cells are another test.
    if (setup.hidden) {
      deck?.stop();
      setup.hidden = false;
      replaceContent(stage, h("p", { role: "status" }, "The board changed, so the test was stopped."));
    }
  });
  return h("div", { class: "stack blind" }, setup, stage);
}
