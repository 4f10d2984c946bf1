import { drawerFile, fromDrawerFile } from "../../drawer/drawer-file.ts";
import { type KeptDrawer, keptFrom } from "../../drawer/kept-drawer.ts";
import { readShelfFile } from "../../shelf/file/read-shelf-file.ts";
import { SHELF_KEY } from "../../shelf/file/shelf-file.ts";
import { newId } from "../../shelf/new-guard.ts";
import { freshId, h } from "../dom/element.ts";
import { saveFile } from "../server/save-file.ts";

/** The drawer in a file of its own, or in a shelf's. @throws Error where there is none */
function drawerIn(text: string): KeptDrawer {
  if (!text.slice(0, 40).includes(SHELF_KEY)) return keptFrom(fromDrawerFile(text), newId);
  const { drawer, drawerFault } = readShelfFile(text);
  if (drawer) return drawer;
  throw new Error(
    drawerFault
      ? `the drawer in this shelf file, ${drawerFault.path}: ${drawerFault.message}.`
      : "this shelf file carries guards and no drawer.",
  );
}

/** The drawer as a file, and a file as the drawer. @param take puts a drawer in the place of the one there @param faultOf what is wrong with one; empty where nothing is */
export function createDrawerFiles(
  drawer: () => KeptDrawer,
  take: (drawer: KeptDrawer) => Promise<void>,
  faultOf: (drawer: KeptDrawer) => Promise<string>,
  say: (words: string) => void,
): HTMLElement {
  const id = freshId("open-drawer");
  const input = h("input", { type: "file", id, class: "file-input", accept: ".json,application/json" });
  const back = h("button", { type: "button", hidden: true }, "Bring back the drawer before");
  input.addEventListener("change", async () => {
    const [file] = input.files ?? [];
    input.value = "";
    if (!file) return;
    try {
      const next = drawerIn(await file.text());
      const fault = await faultOf(next);
      if (fault !== "") throw new Error(fault);
      const before = drawer();
      await take({ ...next, counted: { ...before.counted, ...next.counted } });
      back.hidden = false;
      back.onclick = async () => {
        back.hidden = true;
        await take(before);
      };
      say(`The drawer is that of “${file.name}”.`);
    } catch (error) {
      say(`“${file.name}” was not opened: ${(error as Error).message}`);
    }
  });
  const save = () => saveFile("parts.drawer.json", new Blob([drawerFile(drawer())], { type: "application/json" }));
  return h(
    "div",
    { class: "stack" },
    h(
      "p",
      { class: "hint" },
      "The file of the whole shelf carries the drawer too, and one of some guards where you tick it there.",
    ),
    h(
      "div",
      { class: "buttons" },
      h("button", { type: "button", onclick: save }, "Save the drawer as a file"),
      h("label", { class: "button", for: id }, "Open a drawer file"),
      input,
      back,
    ),
  );
}
