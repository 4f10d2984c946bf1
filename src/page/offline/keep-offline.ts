import { Workbox } from "workbox-window";
import { h } from "../dom/element.ts";

/** Keeps the whole page in the browser, for a workshop without a net, and tells when the service has a newer one. */
export function keepOffline(): void {
  if (!("serviceWorker" in navigator)) return;
  const workbox = new Workbox("/sw.js");
  workbox.addEventListener("waiting", () => {
    workbox.addEventListener("controlling", () => location.reload());
    document.querySelector(".notice")?.after(updateNotice(() => workbox.messageSkipWaiting()));
  });
  // Where no service worker may run, as in a private window, the page works as long as the service is there.
  workbox.register().catch(() => undefined);
}

function updateNotice(load: () => void): HTMLElement {
  return h(
    "div",
    { class: "row update-notice", role: "status" },
    h("p", {}, "There is a newer version of this page. What is on the bench stays."),
    h("button", { type: "button", onclick: load }, "Load it"),
  );
}
