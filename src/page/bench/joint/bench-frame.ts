import { freshId, h } from "../../dom/element.ts";

export interface BenchFrame {
  readonly dialog: HTMLDialogElement;
  readonly content: HTMLElement;
  readonly progress: HTMLProgressElement;
  readonly told: HTMLElement;
  readonly notice: HTMLElement;
  readonly awake: HTMLElement;
  readonly back: HTMLButtonElement;
  readonly next: HTMLButtonElement;
  readonly tick: HTMLInputElement;
  readonly tickLabel: HTMLElement;
  readonly resume: HTMLButtonElement;
}

/** What stands about every page: how far it is above, and below, within a thumb's reach, back, tick and next. */
export function createBenchFrame(): BenchFrame {
  const button = (attributes: object, text: string) => h("button", { type: "button", ...attributes }, text);
  const titleId = freshId("joint-by-joint");
  const close = button({ class: "quiet" }, "Leave");
  const progress = h("progress", { max: 1, value: 0, "aria-label": "Joints soldered" });
  const told = h("p", { class: "bench-told" });
  const notice = h("p", { class: "bench-notice", role: "status" });
  const awake = h("p", { class: "hint awake" });
  const content = h("div", { class: "bench-content" });
  const tick = h("input", { type: "checkbox" });
  const tickLabel = h("label", { class: "bench-tick" }, tick, "Soldered");
  const resume = button({ class: "bench-resume" }, "");
  const back = button({ class: "bench-go" }, "Back");
  const next = button({ class: "bench-go primary" }, "Next");
  const dialog = h(
    "dialog",
    { class: "joint-by-joint no-print", "aria-labelledby": titleId },
    h("header", { class: "bench-head" }, h("h1", { id: titleId }, "Joint by joint"), told, close, progress),
    h("div", { class: "bench-scroll" }, notice, content, awake),
    h("footer", { class: "bench-foot" }, back, h("div", { class: "bench-middle" }, tickLabel, resume), next),
  );
  close.addEventListener("click", () => dialog.close());
  return { dialog, content, progress, told, notice, awake, back, next, tick, tickLabel, resume };
}
