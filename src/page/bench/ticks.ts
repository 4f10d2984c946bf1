import { type Child, h } from "../dom/element.ts";

const KEY = "presolder.ticks.1";
const MAX_KEPT = 500;

/** Where nothing can be stored, the ticks last until the page is closed. */
let unstored: ReadonlySet<string> | undefined;

function read(): Set<string> {
  if (unstored) return new Set(unstored);
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
    unstored = ticked;
  }
}

const kept = (sheet: string, step: string) => `${sheet}|${step}`;

/** The steps of a sheet that are ticked. @returns whether a step is */
export function ticksOf(sheet: string): (step: string) => boolean {
  const ticked = read();
  return (step) => ticked.has(kept(sheet, step));
}

export function setTick(sheet: string, step: string, isDone: boolean): void {
  const ticked = read();
  if (isDone) ticked.add(kept(sheet, step));
  else ticked.delete(kept(sheet, step));
  write(ticked);
}

/**
 * A step with a tick box that is still ticked after a reload: the work takes longer than a visit.
 * @param step what the tick is kept by; the text, where left out
 */
export function tickItem(sheet: string, text: string, shown: Child = text, step: string = text): HTMLElement {
  const input = h("input", { type: "checkbox", checked: ticksOf(sheet)(step), "data-step": step });
  input.addEventListener("change", () => setTick(sheet, step, input.checked));
  return h("li", {}, h("label", { class: "tick" }, input, h("span", {}, shown)));
}

/** Shows the ticks as they are kept, where they were made elsewhere meanwhile. */
export function showTicks(sheet: string, within: ParentNode): void {
  const isTicked = ticksOf(sheet);
  for (const input of within.querySelectorAll<HTMLInputElement>("input[data-step]"))
    input.checked = isTicked(input.dataset.step!);
}
