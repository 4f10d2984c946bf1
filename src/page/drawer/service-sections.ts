import { partWords } from "../../build-file/words/part-words.ts";
import { type Child, h } from "../dom/element.ts";
import { createFormRun, createLongRun } from "../fields/form-run.ts";
import { postJson } from "../server/client.ts";
import { openBuild } from "../start/open-build.ts";
import type { BuildSource } from "../state/reading.ts";
import { buildableView } from "./buildable-answer.ts";
import { changeView } from "./change-answer.ts";
import type { DrawerDesk } from "./drawer-desk.ts";

/** Which exchange of one part is heard, and costs least. @param leave shows the bench */
export function createChangeSection(desk: DrawerDesk, leave: () => void): Child[] {
  const { store, editor } = desk.bench;
  const put = (build: BuildSource) => {
    void editor.edit((source) => ({ ...source, parts: build.parts, wires: build.wires }));
    store.set({ notice: "The change is on the bench; Undo takes it back." });
    leave();
  };
  const ask = async () => {
    const { reading } = store.state;
    if (!reading) return undefined;
    const words = partWords(reading.build.parts);
    const answer = await postJson("/api/heard-change", { build: reading.source, ...desk.asked });
    return changeView(answer, (name) => words.get(name) ?? name, desk.view.drawer.currency, put);
  };
  const { button, answer } = createFormRun("Find the changes that are heard", () => [], ask);
  return [h("div", { class: "buttons" }, button), answer];
}

/** Every guard of the drawer, the best first. @param leave shows the bench */
export function createBuildableSection(desk: DrawerDesk, leave: () => void): Child[] {
  const { store } = desk.bench;
  const ask = async (stop: AbortSignal) =>
    buildableView(await postJson("/api/buildable", desk.asked, stop), async ({ plan, says }) => {
      const title = `From the drawer: ${says[0]!.toLowerCase()}`;
      if (!(await openBuild(desk.bench, { presolder: 1, title, plan }))) return;
      store.set({
        story: undefined,
        notice: "On the bench: a guard from the drawer. Undo brings back the one before.",
      });
      leave();
    });
  const { button, answer } = createLongRun("What can I build", ask);
  return [h("div", { class: "buttons" }, button), answer];
}
