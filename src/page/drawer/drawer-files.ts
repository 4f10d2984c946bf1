import type { DrawerInput } from "../../drawer/drawer-schema.ts";
import { freshId, h } from "../dom/element.ts";
import { saveFile } from "../server/save-file.ts";
import { drawerFile, fromDrawerFile, type KeptDrawer, keptFrom } from "./kept-drawer.ts";

/** The drawer as a file, and a file as the drawer. @param take puts a drawer in the place of the one there @param faultOf what is wrong with one; empty where nothing is */
export function createDrawerFiles(
  drawer: () => KeptDrawer,
  take: (drawer: KeptDrawer) => Promise<void>,
  faultOf: (drawer: DrawerInput) => Promise<string>,
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
      const input = fromDrawerFile(await file.text());
      const fault = await faultOf(input);
      if (fault !== "") throw new Error(fault);
      const next = keptFrom(input, () => crypto.randomUUID());
      const before = drawer();
      await take({ ...next, counted: before.counted });
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
    { class: "buttons" },
    h("button", { type: "button", onclick: save }, "Save the drawer as a file"),
    h("label", { class: "button", for: id }, "Open a drawer file"),
    input,
    back,
  );
}
