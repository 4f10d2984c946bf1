import { h, replaceContent } from "./element.ts";

/** So near the screen that it is what comes next. */
const NEAR = "0px 0px 40px";

/** The code of a page that has been renewed since is gone from the service. */
function failure(error: unknown): HTMLElement {
  return h(
    "div",
    { class: "stack", role: "alert" },
    h("p", { class: "fault-text" }, `This part of the page could not be loaded: ${(error as Error).message}`),
    h(
      "div",
      { class: "buttons" },
      h("button", { type: "button", onclick: () => location.reload() }, "Load the page again"),
    ),
  );
}

/** A place for content whose code is loaded when it is first wanted; content that is there hears `shown`. */
export interface Lazy {
  readonly element: HTMLElement;
  open(): void;
}

export function createLazy(load: () => Promise<HTMLElement>): Lazy {
  const element = h("div", { class: "lazy" }, h("p", { class: "hint loading" }, "Loading…"));
  let content: Promise<HTMLElement> | undefined;
  const show = (loaded: HTMLElement) => {
    if (loaded.parentElement !== element) replaceContent(element, loaded);
    // What waits may be deep within what is loaded, so that the event goes up to where all listen.
    loaded.dispatchEvent(new Event("shown", { bubbles: true }));
  };
  return {
    element,
    open: () => {
      content ??= load();
      content.then(show, (error) => {
        content = undefined;
        replaceContent(element, failure(error));
      });
    },
  };
}

/** Opens it once it comes near the screen. */
export function openWhenNear({ element, open }: Lazy): void {
  const observer = new IntersectionObserver(
    (entries) => {
      if (!entries.some((entry) => entry.isIntersecting)) return;
      observer.disconnect();
      open();
    },
    { rootMargin: NEAR },
  );
  observer.observe(element);
}
