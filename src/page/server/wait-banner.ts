import { h } from "../dom/element.ts";
import { waitingForService } from "./reachable.ts";

/** Says that something waits for the service, and lets go of it on request. */
export function createWaitBanner(): HTMLElement {
  const stop = h("button", { type: "button", onclick: () => waitingForService.giveUp() }, "Do not wait");
  const element = h(
    "div",
    { class: "caution service-wait", id: "service-wait", role: "status", hidden: true },
    h(
      "p",
      {},
      "This needs the service, which cannot be reached now; it goes on by itself as soon as it can. Knobs, curves, sound, sheet and readings work without.",
    ),
    stop,
  );
  let timer: ReturnType<typeof setTimeout> | undefined;
  waitingForService.watch((count) => {
    clearTimeout(timer);
    if (count > 0) element.hidden = false;
    // An attempt under way is not yet an answer: the word stays until it has had time to fail.
    else
      timer = setTimeout(() => {
        element.hidden = true;
      }, 500);
  });
  return element;
}
