import type { WantedAnswer, WantedGuard, WantedRequest } from "../../contract/wanted.ts";
import type { WishesAnswer } from "../../contract/wishes.ts";
import { h, replaceContent } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import { clearFormFaults, formChoice, formText, showFormFaults } from "../fields/form-fields.ts";
import { createLongRun } from "../fields/form-run.ts";
import { postJson } from "../server/client.ts";
import type { Bench } from "../start/bench.ts";
import { openBuild } from "../start/open-build.ts";
import { guardsView } from "./guard-view.ts";
import { WishForm } from "./wish-form.ts";
import { type Vocabulary, written } from "./wish-list.ts";

const INTRO =
  "Say what the guard is to sound like, in words of the trade. Every word is shown as something that can be measured, and can be changed; then guards are looked for, from their layout to their values.";
const EXAMPLE = "glassy 4, fat bridge that cleans up, hum-free 2";

const STARTS = [
  { value: "all", label: "any customary guard" },
  { value: "own", label: "this guard's own plan" },
  { value: "both", label: "both" },
] as const;

function understoodView({ unknown, notes, contradictions }: WishesAnswer): HTMLElement {
  const told = [
    ...unknown
      .filter(({ said }) => !said.includes(" "))
      .map(({ said, nearest }) => `“${said}” is not known here${nearest ? `; did you mean “${nearest}”?` : "."}`),
    ...notes,
    ...contradictions.map(({ text }) => text),
  ];
  return h(
    "ul",
    { class: "told" },
    told.map((text) => h("li", {}, text)),
  );
}

const hint = "No word was understood. Add a place and choose its words below.";

/** Wishes for a sound, and the guards that come nearest to them. */
export function createWantedPanel(bench: Bench): HTMLElement {
  bringStyle("wanted.css");
  const { store, engine } = bench;
  const text = formText("text", "What you want to hear", "", EXAMPLE);
  const form = new WishForm();
  const told = h("div", { role: "status" });
  const starts = formChoice("starts", "Begin with", STARTS);
  const switches = h("input", { type: "checkbox", checked: true });
  let vocabulary: Vocabulary | undefined;

  const understand = async () => {
    clearFormFaults([text]);
    try {
      const answer = await postJson("/api/wishes", { text: text.read() });
      vocabulary = answer;
      form.show(written(answer.wishes), vocabulary);
      const isEmpty = answer.wishes.length === 0 && text.read() !== "";
      replaceContent(told, understoodView(answer), isEmpty && h("p", {}, hint));
    } catch (error) {
      replaceContent(told, h("p", { class: "fault-text" }, showFormFaults([text], error)));
    }
  };

  /** @throws Error where the guard on the bench is wired by no plan */
  const ownPlan = async () => {
    const answer = await engine.planOf(store.state.reading!.source, undefined);
    if (answer.plan !== null) return answer.plan;
    throw new Error(`The guard on the bench is wired by no plan, so it cannot be begun with: ${answer.why}`);
  };

  const startsIn = async (): Promise<Partial<WantedRequest>> => {
    const chosen = starts.read();
    if (chosen === "all") return {};
    return { plan: await ownPlan(), ...(chosen === "both" ? { starts: "all" as const } : {}) };
  };

  const open = async (guard: WantedGuard) => {
    if (await openBuild(bench, guard.build))
      store.set({ notice: "The guard is on the bench, as a plan. Undo brings back the one before." });
    scrollTo({ top: 0 });
  };

  const run = createLongRun("Find guards", async (stop) => {
    const wishes = form.read();
    if (wishes.length === 0) throw new Error("Say what you want to hear first, or add a place and choose a word.");
    const { reading } = store.state;
    // As they are written; what the service cannot read it refuses by name.
    const { cable, load } = (reading?.source ?? {}) as Pick<WantedRequest, "cable" | "load">;
    const request: WantedRequest = {
      wishes,
      switches: switches.checked,
      ...(cable ? { cable } : {}),
      ...(load ? { load } : {}),
      ...(await startsIn()),
    };
    const answer: WantedAnswer = await postJson("/api/wanted", request, stop);
    return guardsView(answer, vocabulary!, (guard) => void open(guard));
  });
  const read = h("button", { type: "button", onclick: () => void understand() }, "Read it");
  text.element.addEventListener("keydown", (event) => {
    if (event.key === "Enter") void understand();
  });
  void understand();
  return h(
    "div",
    { class: "stack wanted-panel" },
    h("h3", {}, "Sound wanted"),
    h("p", {}, INTRO),
    h("div", { class: "wanted-text" }, text.element, read),
    told,
    h("h4", {}, "As it was understood"),
    form.element,
    h(
      "div",
      { class: "field-row" },
      starts.element,
      h("label", { class: "wanted-check" }, switches, "Add switches to the best"),
    ),
    h(
      "p",
      { class: "hint" },
      "Cable and amplifier are those of the guard on the bench. The search takes some seconds; it can be stopped.",
    ),
    h("div", { class: "buttons" }, run.button),
    run.answer,
  );
}
