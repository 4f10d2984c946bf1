import type { PageOffer, StartGuards, StartScenario } from "../../contract/page-data.ts";
import { freshId, h, replaceContent } from "../dom/element.ts";
import { pageOffer, startGuards } from "../server/page-data.ts";
import type { Bench } from "./bench.ts";
import { openBuild, toReading } from "./open-build.ts";

const PLAN = "plan:";
export const FILE_PREFIX = "file:";

async function openScenario(bench: Bench, { id, build, compareWith, ...rest }: StartScenario): Promise<void> {
  const { description, question, settings, sweep } = rest;
  if (!(await openBuild(bench, build, settings))) return;
  bench.store.set({ startedFrom: id, story: { description, question, ...(sweep ? { sweep } : {}) }, other: undefined });
  if (compareWith !== undefined) bench.store.set({ other: await toReading(bench, compareWith) });
}

async function openPlan(bench: Bench, { plans }: StartGuards, id: string): Promise<void> {
  const plan = plans.find((each) => each.id === id);
  if (!plan || !(await openBuild(bench, plan.build))) return;
  bench.store.set({ startedFrom: PLAN + id, story: undefined, other: undefined });
}

async function open(bench: Bench, value: string): Promise<void> {
  const data = await startGuards();
  if (value.startsWith(PLAN)) return openPlan(bench, data, value.slice(PLAN.length));
  const scenario = data.scenarios.find(({ id }) => id === value);
  return scenario && openScenario(bench, scenario);
}

function fillOptions(select: HTMLSelectElement, { scenarios, plans }: Pick<PageOffer, "scenarios" | "plans">): void {
  replaceContent(
    select,
    h("option", { value: "" }, "choose…"),
    h(
      "optgroup",
      { label: "Decisions" },
      scenarios.map((each) => h("option", { value: each.id }, each.title)),
    ),
    h(
      "optgroup",
      { label: "Customary guards" },
      plans.map((plan) => h("option", { value: PLAN + plan.id }, plan.title)),
    ),
  );
}

/** The example guards, each a decision, and the customary ones; `fill` offers them once the first screen stands. */
export function createScenarioPicker(bench: Bench): { readonly element: HTMLElement; fill(): Promise<void> } {
  const { store } = bench;
  const id = freshId("scenario");
  const select = h("select", { id });
  fillOptions(select, { scenarios: [], plans: [] });
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
  const count = (more: number) => store.set({ opening: store.state.opening + more });
  select.addEventListener("change", () => {
    if (!select.value) return;
    count(1);
    void open(bench, select.value)
      .catch(tell)
      .finally(() => count(-1));
  });
  return {
    element: h("div", { class: "field start-from" }, h("label", { for: id }, "Start from"), select),
    fill: () =>
      pageOffer().then((data) => {
        fillOptions(select, data);
        show();
      }, tell),
  };
}
