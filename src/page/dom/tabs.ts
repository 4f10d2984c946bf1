import { h } from "./element.ts";
import { createLazy, openWhenNear } from "./lazy.ts";

export interface Tab {
  readonly id: string;
  readonly title: string;
  readonly load: () => Promise<HTMLElement>;
}

const MOVES: Readonly<Record<string, (index: number, count: number) => number>> = {
  ArrowRight: (index, count) => (index + 1) % count,
  ArrowLeft: (index, count) => (index + count - 1) % count,
  Home: () => 0,
  End: (_index, count) => count - 1,
};

/**
 * Tabs after the WAI-ARIA pattern: arrow keys walk along them, Tab goes into the shown one, whose content hears `shown`. What
 * a tab holds is loaded when it is first shown, the first when the tabs come near the screen.
 * @param isAsked whether the tabs themselves were asked for: then the first is loaded at once
 */
export function createTabs(label: string, tabs: readonly Tab[], isAsked = false): HTMLElement {
  const buttons = tabs.map(({ id, title }) =>
    h("button", { type: "button", role: "tab", id: `tab-${id}`, "aria-controls": `panel-${id}`, class: "tab" }, title),
  );
  const contents = tabs.map(({ load }) => createLazy(load));
  const panels = tabs.map(({ id }, index) =>
    h(
      "div",
      { role: "tabpanel", id: `panel-${id}`, "aria-labelledby": `tab-${id}`, class: "tab-panel" },
      contents[index]!.element,
    ),
  );
  const select = (index: number) => {
    for (const [at, button] of buttons.entries()) {
      button.setAttribute("aria-selected", String(at === index));
      button.tabIndex = at === index ? 0 : -1;
      panels[at]!.hidden = at !== index;
    }
  };
  const show = (index: number) => {
    select(index);
    contents[index]!.open();
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
  // What is within a tab may have something to say while another is shown.
  for (const [index, panel] of panels.entries())
    panel.addEventListener("bring", (event) => {
      event.stopPropagation();
      show(index);
    });
  select(0);
  if (isAsked) contents[0]!.open();
  else openWhenNear(contents[0]!);
  return h(
    "section",
    { class: "panel work", "aria-label": label },
    h("div", { role: "tablist", "aria-label": label, class: "tabs" }, buttons),
    panels,
  );
}
