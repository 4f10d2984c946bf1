import { type Child, h } from "../dom/element.ts";

const KEY = "presolder.ticks.1";
const MAX_KEPT = 500;

function read(): Set<string> {
  try {
    return new Set(JSON.parse(localStorage.getItem(KEY) ?? "[]") as string[]);
  } catch {
    return new Set();
  }
}

function write(ticked: ReadonlySet<string>): void {
  try {
    localStorage.setItem(KEY, JSON.stringify([...ticked].slice(-MAX_KEPT)));
  } catch {
    // Without storage the ticks last until the page is closed.
  }
}

/** A step with a tick box that is still ticked after a reload: the work takes longer than a visit. */
export function tickItem(sheet: string, text: string, shown: Child = text): HTMLElement {
  const key = `${sheet}|${text}`;
  const input = h("input", { type: "checkbox", checked: read().has(key) });
  input.addEventListener("change", () => {
    const ticked = read();
    if (input.checked) ticked.add(key);
    else ticked.delete(key);
    write(ticked);
  });
  return h("li", {}, h("label", { class: "tick" }, input, h("span", {}, shown)));
}
