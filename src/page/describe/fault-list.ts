import type { InputFault } from "../../errors.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";

/** "build.parts.cap1.capacitance" as it stands on the page. */
function place(path: string): string {
  return path.replace(/^build\./, "").replaceAll(".", " › ");
}

/** Frames until the field's tab, whose code may have to come first, is given up. */
const MAX_FRAMES = 300;

function focusOn(target: string, frames = MAX_FRAMES): void {
  const field = [...document.querySelectorAll<HTMLElement>("[data-path]")].find((each) => each.dataset.path === target);
  if (field) {
    field.closest("details")?.setAttribute("open", "");
    field.focus();
  } else if (frames > 0) requestAnimationFrame(() => focusOn(target, frames - 1));
}

function goTo(path: string): void {
  const target = path.replace(/^build\./, "");
  document.getElementById(target.startsWith("wires.") ? "tab-wires" : "tab-parts")?.click();
  focusOn(target);
}

function faultItem({ path, message }: InputFault): HTMLElement {
  return h(
    "li",
    {},
    h("button", { type: "button", class: "quiet", onclick: () => goTo(path) }, place(path)),
    ` ${message}`,
  );
}

/** What keeps the build from being read, each fault leading to its field. */
export function createFaultList(store: AppStore): HTMLElement {
  const list = h("ul", {});
  const element = h(
    "div",
    { class: "faults", role: "alert" },
    h(
      "p",
      {},
      "Not readable yet. Curves, drawing and sound are of the last readable state; sheet, meter table and findings wait.",
    ),
    list,
  );
  store.watch(
    (state) => [state.faults],
    (faults) => {
      element.hidden = faults.length === 0;
      replaceContent(list, faults.map(faultItem));
    },
  );
  return element;
}
