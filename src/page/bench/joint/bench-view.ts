import { replaceContent } from "../../dom/element.ts";
import { bringStyle } from "../../dom/style-sheet.ts";
import type { AppStore } from "../../state/app-state.ts";
import { setTick, ticksOf } from "../ticks.ts";
import { type BenchFrame, createBenchFrame } from "./bench-frame.ts";
import { listenToKeys, listenToSwipes } from "./bench-keys.ts";
import { type BenchPage, benchPages } from "./bench-pages.ts";
import { progressOf } from "./bench-progress.ts";
import { type Job, jobOf, pageView } from "./page-views.ts";
import { keepAwake, type WakeState } from "./wake-lock.ts";

const AWAKE_WORDS: Readonly<Record<WakeState, string>> = {
  on: "The screen stays on while this is open.",
  off: "The screen may go dark: this browser does not keep it on just now.",
  cannot: "This browser cannot keep the screen on: set the phone to go dark later.",
};

const CHANGED = "The guard has changed: this is its sheet as it is now. Joints that are the same are still ticked.";
const WAITING = "The guard has changed: its sheet is being worked out anew.";

/** The sheet, one page at a time. */
class BenchView {
  readonly #frame: BenchFrame = createBenchFrame();
  #job: Job | undefined;
  #pages: readonly BenchPage[] = [];
  #at = 0;

  constructor() {
    const { dialog, content, back, next, tick, resume } = this.#frame;
    back.addEventListener("click", () => this.#go(-1));
    next.addEventListener("click", () => this.#go(1));
    tick.addEventListener("change", () => this.#tick(tick.checked));
    resume.addEventListener("click", () => this.#show(this.#progress().firstOpen ?? this.#at));
    const moves = { go: (by: 1 | -1) => this.#go(by), tick: () => this.#toggle() };
    listenToKeys(dialog, moves);
    listenToSwipes(content, moves);
  }

  get dialog(): HTMLDialogElement {
    return this.#frame.dialog;
  }

  /** Another sheet: of the same joint where it has that, or else of the first that is not ticked. */
  take(job: Job, isChanged: boolean): void {
    const key = this.#pages[this.#at]?.key;
    this.#job = job;
    this.#pages = benchPages(job.input.schedule, job.sheet);
    const same = this.#pages.findIndex((page) => page.key === key);
    this.#frame.notice.textContent = isChanged ? CHANGED : "";
    this.#show(same >= 0 ? same : isChanged ? (this.#progress().firstOpen ?? 0) : 0);
  }

  wait(fault: string): void {
    const { notice, content, next, back, tick } = this.#frame;
    notice.textContent = fault ? `The sheet cannot be made: ${fault}` : WAITING;
    replaceContent(content);
    for (const control of [next, back, tick]) control.disabled = true;
  }

  tellAwake(state: WakeState): void {
    this.#frame.awake.textContent = AWAKE_WORDS[state];
  }

  #progress() {
    return progressOf(this.#pages, ticksOf(this.#job!.title));
  }

  #go(by: 1 | -1): void {
    if (this.#frame.next.disabled) return;
    if (this.#at + by >= this.#pages.length) {
      this.dialog.close();
      return;
    }
    this.#frame.notice.textContent = "";
    if (this.#at + by >= 0) this.#show(this.#at + by);
  }

  #show(at: number): void {
    this.#at = at;
    const { content } = this.#frame;
    const page = this.#pages[at]!;
    replaceContent(content, pageView(this.#job!, page));
    content.dataset.page = page.kind;
    content.parentElement!.scrollTop = 0;
    this.#tell();
    content.querySelector<HTMLElement>("h2")?.focus();
  }

  #tell(): void {
    const { progress, told, back, next, tick, tickLabel, resume, awake } = this.#frame;
    const page = this.#pages[this.#at]!;
    const { done, count, firstOpen, text } = this.#progress();
    progress.max = count;
    progress.value = done;
    told.textContent = text;
    back.disabled = this.#at === 0;
    next.disabled = false;
    next.textContent = this.#at === this.#pages.length - 1 ? "Done" : "Next";
    const isJoint = page.kind === "joint";
    tickLabel.hidden = !isJoint;
    tick.disabled = false;
    tick.checked = isJoint && ticksOf(this.#job!.title)(page.key);
    const open = firstOpen === undefined ? undefined : this.#pages[firstOpen];
    resume.hidden = page.kind !== "cautions" || done === 0 || open?.kind !== "joint";
    resume.textContent = open?.kind === "joint" ? `On to joint ${open.joint.number}` : "";
    awake.hidden = page.kind !== "cautions";
  }

  #toggle(): void {
    if (this.#frame.tickLabel.hidden || this.#frame.tick.disabled) return;
    this.#tick(!this.#frame.tick.checked);
  }

  #tick(isDone: boolean): void {
    setTick(this.#job!.title, this.#pages[this.#at]!.key, isDone);
    this.#tell();
  }
}

/**
 * Goes through the guard's sheet joint by joint, over the whole page, until it is left; the sheet follows the guard meanwhile.
 * @param onClose hears of it being left
 */
export function openJointByJoint(store: AppStore, onClose: () => void): void {
  bringStyle("joint.css");
  const view = new BenchView();
  const { dialog } = view;
  document.body.append(dialog);
  dialog.showModal();
  const release = keepAwake((state) => view.tellAwake(state));
  let shown: Job | undefined;
  const stop = store.watch(
    ({ bench, benchOf, reading, benchFault }) => [bench, benchOf, reading, benchFault] as const,
    (bench, of, reading, fault) => {
      if (!bench || !of || of !== reading) return view.wait(fault);
      if (shown?.sheet === bench.sheet && shown.reading === of) return;
      const before = shown;
      shown = jobOf(of, bench.sheet, bench.temperature);
      view.take(shown, before !== undefined && before.reading !== of);
    },
  );
  dialog.addEventListener("close", () => {
    stop();
    release();
    dialog.remove();
    onClose();
  });
}
