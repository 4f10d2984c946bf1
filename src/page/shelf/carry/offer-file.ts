import { h, replaceContent } from "../../dom/element.ts";
import { handToShelf } from "./handed-files.ts";

/** Asks whether a shelf file is to be opened where it belongs. @param open shows the shelf */
export function offerShelfFile(place: HTMLElement, file: File, open: () => void): void {
  const close = () => replaceContent(place);
  const take = () => {
    close();
    handToShelf(file);
    open();
  };
  replaceContent(
    place,
    h(
      "div",
      { class: "doubtful-file", role: "alert" },
      h("p", {}, `${file.name} is a shelf file: guards to be kept, not one guard for the bench.`),
      h(
        "div",
        { class: "buttons" },
        h("button", { type: "button", onclick: take }, "Open it on the shelf"),
        h("button", { type: "button", onclick: close }, "Leave it"),
      ),
    ),
  );
}
