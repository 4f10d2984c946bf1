import { isEmptyDrawer } from "../../../drawer/kept-drawer.ts";
import type { Guard } from "../../../shelf/guard.ts";
import { freshId, h } from "../../dom/element.ts";
import { ServiceProblem } from "../../server/client.ts";
import type { ShelfDesk } from "../desk.ts";
import type { Selection } from "../list/selection.ts";
import { saveGuards } from "../save-shelf.ts";
import { createDrawerTick } from "./drawer-tick.ts";
import { receiveFiles } from "./handed-files.ts";
import { guardsInFile } from "./import-files.ts";
import { createShelfLink } from "./shelf-link.ts";
import type { TakeIn } from "./take-in.ts";

interface Carry {
  /** The ids of those that the search shows. */
  found(): readonly string[];
  readonly selection: Selection;
  readonly takeIn: TakeIn;
  remove(ids: readonly string[]): void;
  failed(error: unknown, unkept?: readonly Guard[]): void;
}

/** The person's parts; undefined where there are none. */
async function drawerForFile() {
  const { openDrawer } = await import("../../drawer/drawer-keeper.ts");
  const drawer = await (await openDrawer()).read();
  return isEmptyDrawer(drawer) ? undefined : drawer;
}

/** What is done with several guards at a time: those ticked, or else all that the search shows. */
export function createCarryBar(desk: ShelfDesk, carry: Carry) {
  const { selection, takeIn, failed } = carry;
  const link = createShelfLink();
  const wanted = () => (selection.ids.length > 0 ? selection.ids : carry.found());
  const tried = (action: () => Promise<void>) => async () => {
    try {
      await action();
    } catch (error) {
      failed(error);
    }
  };
  const withDrawer = createDrawerTick();
  const save = tried(async () => {
    const drawer = withDrawer.isTicked ? await drawerForFile() : undefined;
    saveGuards(await desk.shelf.getAll(wanted()), drawer);
  });
  const makeLink = tried(async () => {
    const guards = await desk.shelf.getAll(wanted());
    try {
      await link.make(guards);
    } catch (error) {
      if (!(error instanceof ServiceProblem)) throw error;
      failed(new Error(`No link: ${error.message}. A file carries them, histories included.`), guards);
    }
  });
  const id = freshId("open-shelf");
  const input = h("input", { type: "file", id, class: "file-input", accept: ".json,application/json", multiple: true });
  const openFiles = (files: readonly File[]) =>
    tried(async () => {
      for (const file of files) await takeIn.take(await guardsInFile(file), file.name);
    })();
  input.addEventListener("change", () => {
    const files = [...(input.files ?? [])];
    input.value = "";
    void openFiles(files);
  });
  receiveFiles((file) => {
    input.dispatchEvent(new Event("bring", { bubbles: true }));
    void openFiles([file]);
  });
  const button = (text: string, onclick: () => void) => h("button", { type: "button", onclick }, text);
  const saveButton = button("", save);
  const linkButton = button("", makeLink);
  const remove = button("", () => carry.remove(selection.ids));
  const all = button("", () => selection.set(carry.found(), true));
  const none = button("Select none", () => selection.set(selection.ids, false));
  /** @param isWhole false as long as more guards may be found than are read yet: none is to be left out of a file unseen */
  const show = (shown: number, onShelf: number, isWhole: boolean) => {
    const ticked = selection.ids.length;
    const which = ticked > 0 ? `the ${ticked} selected` : shown < onShelf ? `the ${shown} found` : "the shelf";
    withDrawer.show(ticked === 0 && shown === onShelf);
    saveButton.textContent = `Save ${which} as a file`;
    linkButton.textContent = `Link to ${which}`;
    remove.textContent = `Delete the ${ticked} selected`;
    all.textContent = shown < onShelf ? "Select all found" : "Select all";
    saveButton.disabled = linkButton.disabled = ticked + shown === 0 || !isWhole;
    all.disabled = !isWhole;
    remove.hidden = none.hidden = ticked === 0;
    all.hidden = shown === 0;
  };
  show(0, 0, false);
  return {
    element: h(
      "div",
      { class: "stack" },
      h(
        "div",
        { class: "buttons" },
        h("span", { class: "file-holder" }, input, h("label", { for: id, class: "button" }, "Open a shelf file")),
        saveButton,
        withDrawer.element,
        linkButton,
        all,
        none,
        remove,
      ),
      link.element,
    ),
    show,
  };
}
