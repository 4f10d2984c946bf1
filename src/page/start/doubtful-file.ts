import type { InputFault } from "../../errors.ts";
import { h, replaceContent } from "../dom/element.ts";

export interface DoubtfulFile {
  readonly name: string;
  readonly faults: readonly InputFault[];
  open(): void;
}

const MAX_SHOWN = 8;

function faultItem({ path, message }: InputFault): HTMLElement {
  return h("li", {}, h("b", {}, path.replace(/^build\./, "").replaceAll(".", " › ")), ` ${message}`);
}

/** Asks before a file with faults takes the place of a guard that is in order. */
export function createDoubtfulFile(): { element: HTMLElement; ask(file: DoubtfulFile): void; close(): void } {
  const element = h("div", { class: "doubtful-file", role: "alert", hidden: true });
  const close = () => {
    element.hidden = true;
    replaceContent(element);
  };
  const ask = ({ name, faults, open }: DoubtfulFile) => {
    const openAnyway = () => {
      close();
      open();
    };
    const left = faults.length - MAX_SHOWN;
    replaceContent(
      element,
      h("p", {}, `${name} has faults and was not opened; the guard on the bench is still there.`),
      h("ul", {}, faults.slice(0, MAX_SHOWN).map(faultItem), left > 0 && h("li", {}, `and ${left} more`)),
      h(
        "div",
        { class: "buttons" },
        h("button", { type: "button", class: "button", onclick: openAnyway }, "Open it anyway and mend it here"),
        h("button", { type: "button", class: "button", onclick: close }, "Keep this guard"),
      ),
    );
    element.hidden = false;
  };
  return { element, ask, close };
}
