import { freshId, h, replaceContent } from "../dom/element.ts";
import { fileStem, saveFile } from "../server/save-file.ts";
import type { ShelfDoor } from "../shelf/shelf-door.ts";
import type { AppStore } from "../state/app-state.ts";
import type { Bench } from "./bench.ts";
import { createDoubtfulFile } from "./doubtful-file.ts";
import { openBuild, toSource } from "./open-build.ts";
import { parseJson } from "./parse-json.ts";
import { FILE_PREFIX } from "./scenario-picker.ts";

type Doubt = ReturnType<typeof createDoubtfulFile>;

type Shelf = Pick<ShelfDoor, "buttons" | "show">;

/** The largest build file stays under 100 kB; anything far above it is another kind of file. */
const MAX_FILE_BYTES = 1 << 20;

/** Whole, or cut short after its head: the shelf says what is wrong with it. */
async function isShelfFile(file: File): Promise<boolean> {
  return /^\s*\{\s*"presolderShelf"/.test(await file.slice(0, 200).text());
}

async function openFile(bench: Bench, file: File, doubt: Doubt): Promise<void> {
  const { store, engine } = bench;
  if (file.size > MAX_FILE_BYTES) {
    store.set({ notice: `${file.name} is too large for a build file.` });
    return;
  }
  try {
    const input = parseJson(await file.text());
    const form = await toSource(bench, input);
    if ("message" in form) throw new Error(form.message);
    const open = async () => {
      if (await openBuild(bench, form.source)) store.set({ story: undefined, startedFrom: FILE_PREFIX + file.name });
    };
    const read = await engine.read(form.source);
    if ("faults" in read && store.state.reading && store.state.faults.length === 0)
      doubt.ask({ name: file.name, faults: read.faults, open: () => void open() });
    else await open();
  } catch (error) {
    store.set({ notice: `${file.name} cannot be read: ${(error as Error).message}` });
  }
}

function save({ state }: AppStore): void {
  if (!state.source) return;
  const text = `${JSON.stringify(state.source, null, 2)}\n`;
  saveFile(`${fileStem(state.source.title)}.presolder.json`, new Blob([text], { type: "application/json" }));
}

/** Open and save the build file, undo and redo, and what the shelf has in their row. */
export function createFileButtons(bench: Bench, shelf: Shelf): HTMLElement {
  const { store, editor } = bench;
  const id = freshId("open-file");
  const input = h("input", { type: "file", id, class: "file-input", accept: ".json,application/json" });
  input.addEventListener("change", async () => {
    const [file] = input.files ?? [];
    if (file) await open(file);
    input.value = "";
  });
  const doubt = createDoubtfulFile();
  const offer = h("div", {});
  const open = async (file: File) => {
    doubt.close();
    replaceContent(offer);
    if (!(await isShelfFile(file))) return openFile(bench, file, doubt);
    const { offerShelfFile } = await import("../shelf/carry/offer-file.ts");
    offerShelfFile(offer, file, shelf.show);
  };
  const undo = h("button", { type: "button", onclick: () => void editor.undo(), title: "Ctrl+Z" }, "Undo");
  const redo = h("button", { type: "button", onclick: () => void editor.redo(), title: "Ctrl+Shift+Z" }, "Redo");
  store.watch(
    (state) => [state.canUndo, state.canRedo],
    (canUndo, canRedo) => {
      undo.disabled = !canUndo;
      redo.disabled = !canRedo;
    },
  );
  const buttons = h(
    "div",
    { class: "buttons" },
    undo,
    redo,
    h("span", { class: "file-holder" }, input, h("label", { for: id, class: "button" }, "Open build file")),
    h("button", { type: "button", onclick: () => save(store) }, "Save build file"),
    shelf.buttons,
  );
  return h("div", { class: "stack" }, buttons, doubt.element, offer);
}
