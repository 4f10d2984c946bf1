import type { InputFault } from "../../errors.ts";
import { h, replaceContent } from "../dom/element.ts";
import type { AppStore } from "../state/app-state.ts";

/** "build.parts.cap1.capacitance" as it stands on the page. */
function place(path: string): string {
  return path.replace(/^build\./, "").replaceAll(".", " › ");
}

function goTo(path: string): void {
  const target = path.replace(/^build\./, "");
  const field = [...document.querySelectorAll<HTMLElement>("[data-path]")].find((each) => each.dataset.path === target);
  field?.closest("details")?.setAttribute("open", "");
  field?.focus();
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
    h("p", {}, "Not readable yet. Curves and drawing show the last readable state."),
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
