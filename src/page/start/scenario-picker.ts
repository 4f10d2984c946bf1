import { freshId, h, replaceContent } from "../dom/element.ts";
import { getJson } from "../server/client.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Editor } from "../state/editor.ts";
import { openBuild } from "./open-build.ts";

export interface Scenario {
  readonly id: string;
  readonly title: string;
  readonly description?: string;
}

export async function openScenario(store: AppStore, editor: Editor, id: string): Promise<void> {
  const { build } = await getJson<{ build: unknown }>(`/api/scenarios/${encodeURIComponent(id)}`);
  openBuild(store, editor, build);
}

/** The example guards, each a decision. Nothing is opened until one is chosen. */
export function createScenarioPicker(
  store: AppStore,
  editor: Editor,
): { element: HTMLElement; ready: Promise<Scenario[]> } {
  const id = freshId("scenario");
  const select = h("select", { id }, h("option", { value: "" }, "choose…"));
  select.addEventListener("change", () => {
    if (select.value)
      openScenario(store, editor, select.value).catch((error: Error) => store.set({ notice: error.message }));
  });
  const ready = getJson<{ scenarios: Scenario[] }>("/api/scenarios").then(({ scenarios }) => {
    replaceContent(
      select,
      h("option", { value: "" }, "choose…"),
      scenarios.map((each) => h("option", { value: each.id }, each.title)),
    );
    return scenarios;
  });
  return { element: h("div", { class: "field" }, h("label", { for: id }, "Start from an example"), select), ready };
}
