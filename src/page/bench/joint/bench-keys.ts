export interface BenchMoves {
  go(by: 1 | -1): void;
  tick(): void;
}

/** What takes arrows and space itself. */
const TAKES_KEYS = "button, input, summary, a, .table-frame";

/** Arrows go from page to page, space ticks; Escape is the dialog's own. */
export function listenToKeys(dialog: HTMLElement, { go, tick }: BenchMoves): void {
  dialog.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const on = (event.target as Element).closest(TAKES_KEYS);
    if (event.key === "ArrowRight" || event.key === "ArrowLeft") {
      if (on?.matches(".table-frame")) return;
      event.preventDefault();
      go(event.key === "ArrowRight" ? 1 : -1);
    } else if (event.key === " " && !on) {
      event.preventDefault();
      tick();
    }
  });
}

/** Pixels across, and how much more across than down, that make a swipe of a touch. */
const SWIPE = 60;
const ACROSS = 2;

/** A swipe to the left goes on, one to the right back. */
export function listenToSwipes(element: HTMLElement, { go }: Pick<BenchMoves, "go">): void {
  let start: Touch | undefined;
  element.addEventListener(
    "touchstart",
    ({ touches }) => {
      start = touches.length === 1 ? touches[0] : undefined;
    },
    { passive: true },
  );
  element.addEventListener("touchend", ({ changedTouches }) => {
    const end = changedTouches[0];
    if (!start || !end) return;
    const [across, down] = [end.clientX - start.clientX, end.clientY - start.clientY];
    start = undefined;
    if (Math.abs(across) >= SWIPE && Math.abs(across) >= ACROSS * Math.abs(down)) go(across < 0 ? 1 : -1);
  });
}
