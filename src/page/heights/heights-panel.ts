import { partsOfKind } from "../../build-file/parts-of-kind.ts";
import { partWords } from "../../build-file/words/part-words.ts";
import { stringSetOf } from "../../response/coil-places.ts";
import { benchEngineOf } from "../bench/bench-desk.ts";
import { h, replaceContent } from "../dom/element.ts";
import { bringStyle } from "../dom/style-sheet.ts";
import type { Replied } from "../engine/heights-reader.ts";
import { createFormRun } from "../fields/form-run.ts";
import { ServiceProblem } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Reading } from "../state/reading.ts";
import { createHabits } from "./habits-view.ts";
import { heightsView } from "./heights-answer.ts";
import { createHeightsCautions } from "./heights-cautions.ts";
import { createHeightsForm, type HeightsForm } from "./heights-form.ts";
import type { ReadRecording } from "./level-row.ts";

/** @throws ServiceProblem with a refusal's faults, for the fields at fault */
function answerIn<Answer>(reply: Replied<Answer>): Answer {
  if ("answer" in reply) return reply.answer;
  throw new ServiceProblem(reply.refusal, reply.faults);
}

/** What the form is made for: another value of a part leaves it as it is filled in. */
function shapeOf({ build, controls }: Reading): string {
  const pickups = partsOfKind(build, "pickup").map(([name]) => name);
  return JSON.stringify([pickups, controls.main, stringSetOf(build).strings.length]);
}

const INTRO =
  "How far to turn each pickup's two screws so that positions and strings are equally loud. How much a turn changes is read from recordings at two heights, never assumed.";

/** Turns of the height screws, and what changes for the player beside the guard kept as B. */
export function createHeightsPanel(store: AppStore): HTMLElement {
  bringStyle("tools.css");
  const engine = benchEngineOf(store);
  const readRecording: ReadRecording = async (file, question) => answerIn(await engine.stringLevels(file, question));
  const forms = new Map<string, HeightsForm>();
  let form: HeightsForm | undefined;
  const holder = h("div", {});
  const run = createFormRun(
    "Work out the turns",
    () => form?.fields() ?? [],
    async () => {
      const { reading } = store.state;
      if (!reading || !form) return undefined;
      const words = partWords(reading.build.parts);
      const told = answerIn(await engine.heights(reading.build, form.read()));
      return heightsView(told, (name) => words.get(name) ?? name);
    },
  );
  const show = (reading: Reading) => {
    const shape = shapeOf(reading);
    const known =
      forms.get(shape) ?? createHeightsForm(reading, stringSetOf(reading.build).strings.length, readRecording);
    forms.set(shape, known);
    if (known === form) return;
    form = known;
    replaceContent(holder, form.element);
    replaceContent(run.answer);
  };
  store.watch(
    (state) => [state.reading],
    (reading) => {
      if (reading) show(reading);
    },
  );
  return h(
    "div",
    { class: "stack heights-panel" },
    h("h3", {}, "Pickup heights"),
    h("p", {}, INTRO),
    createHeightsCautions(),
    holder,
    h("div", { class: "buttons" }, run.button),
    run.answer,
    createHabits(store, engine),
  );
}
