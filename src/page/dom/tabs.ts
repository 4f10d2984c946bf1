import { h } from "./element.ts";

export interface Tab {
  readonly id: string;
  readonly title: string;
  readonly content: HTMLElement;
}

const MOVES: Readonly<Record<string, (index: number, count: number) => number>> = {
  ArrowRight: (index, count) => (index + 1) % count,
  ArrowLeft: (index, count) => (index + count - 1) % count,
  Home: () => 0,
  End: (_index, count) => count - 1,
};

/** Tabs after the WAI-ARIA pattern: arrow keys walk along them, Tab goes into the shown one, whose content hears `shown`. */
export function createTabs(label: string, tabs: readonly Tab[]): HTMLElement {
  const buttons = tabs.map(({ id, title }) =>
    h("button", { type: "button", role: "tab", id: `tab-${id}`, "aria-controls": `panel-${id}`, class: "tab" }, title),
  );
  const panels = tabs.map(({ id, content }) =>
    h("div", { role: "tabpanel", id: `panel-${id}`, "aria-labelledby": `tab-${id}`, class: "tab-panel" }, content),
  );
  const show = (index: number) => {
    for (const [at, button] of buttons.entries()) {
      button.setAttribute("aria-selected", String(at === index));
      button.tabIndex = at === index ? 0 : -1;
      panels[at]!.hidden = at !== index;
    }
    tabs[index]!.content.dispatchEvent(new Event("shown"));
  };
  for (const [index, button] of buttons.entries()) {
    button.addEventListener("click", () => show(index));
    button.addEventListener("keydown", (event) => {
      const next = MOVES[event.key]?.(index, buttons.length);
      if (next === undefined) return;
      event.preventDefault();
      show(next);
      buttons[next]!.focus();
    });
  }
  show(0);
  return h(
    "section",
    { class: "panel work", "aria-label": label },
    h("div", { role: "tablist", "aria-label": label, class: "tabs" }, buttons),
    panels,
  );
}
