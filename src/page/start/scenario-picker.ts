import { CATALOGUE } from "../../build-file/catalogue.ts";
import type { ScenarioEntry } from "../../contract/scenarios.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import { getJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { openBuild, toReading } from "./open-build.ts";

async function openScenario(store: AppStore, editor: Editor, id: string): Promise<void> {
  const scenario = await getJson(`/api/scenarios/${encodeURIComponent(id)}`);
  if (!openBuild(store, editor, scenario.build, scenario.settings)) return;
  const other = scenario.compareWith === undefined ? undefined : toReading(scenario.compareWith);
  store.set({ startedFrom: id, story: { description: scenario.description, question: scenario.question }, other });
}

function openPlan(store: AppStore, editor: Editor, id: string): void {
  const preset = CATALOGUE.plans.find((each) => each.id === id);
  if (!preset) return;
  const cable = { length: "3m", capacitance: "100p" };
  openBuild(store, editor, { presolder: 1, title: preset.title, plan: preset.plan, cable });
  store.set({ startedFrom: PLAN + id, story: undefined, other: undefined });
}

const PLAN = "plan:";
export const FILE_PREFIX = "file:";
/** Shows most of what the page can do: a lever, two tones, a push-pull and a build to compare with. */
const FIRST_SCENARIO = "hss-250k-or-500k";

function fillOptions(select: HTMLSelectElement, entries: readonly ScenarioEntry[]): void {
  replaceContent(
    select,
    h("option", { value: "" }, "choose…"),
    h(
      "optgroup",
      { label: "Decisions" },
      entries.map((each) => h("option", { value: each.id }, each.title)),
    ),
    h(
      "optgroup",
      { label: "Customary guards" },
      CATALOGUE.plans.map((plan) => h("option", { value: PLAN + plan.id }, plan.title)),
    ),
  );
}

export interface ScenarioPicker {
  readonly element: HTMLElement;
  /** Opens the first example, for somebody who has nothing on the bench. */
  openFirst(): Promise<void>;
}

/** The example guards, each a decision, and the customary ones. */
export function createScenarioPicker(store: AppStore, editor: Editor): ScenarioPicker {
  const id = freshId("scenario");
  const select = h("select", { id });
  fillOptions(select, []);
  const open = (value: string) =>
    value.startsWith(PLAN)
      ? Promise.resolve(openPlan(store, editor, value.slice(PLAN.length)))
      : openScenario(store, editor, value);
  const tell = (error: Error) => {
    store.set({ notice: error.message });
    show();
  };
  const show = () => {
    const { startedFrom } = store.state;
    const isFile = startedFrom.startsWith(FILE_PREFIX);
    select.options[0]!.textContent = isFile ? `file ${startedFrom.slice(FILE_PREFIX.length)}` : "choose…";
    select.value = isFile ? "" : startedFrom;
  };
  store.watchAny((state) => [state.startedFrom], show);
  select.addEventListener("change", () => select.value && open(select.value).catch(tell));
  const entries = getJson("/api/scenarios").then(({ scenarios }) => {
    fillOptions(select, scenarios);
    show();
    return scenarios;
  });
  entries.catch(tell);
  return {
    element: h("div", { class: "field start-from" }, h("label", { for: id }, "Start from"), select),
    openFirst: async () => {
      const all = await entries;
      const first = all.find((entry) => entry.id === FIRST_SCENARIO) ?? all[0];
      if (!first || store.state.source) return;
      await open(first.id);
    },
  };
}
