/** Runs an action once things have been quiet for a while, however often it is asked for meanwhile. */
export function later(waitMs: number, action: () => unknown): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(action, waitMs);
  };
}

/**
 * Tells of several answers to one question that come in any order which is wanted still: each call starts a question and
 * gives what says whether it is the latest.
 */
export function latestOnly(): () => () => boolean {
  let latest = 0;
  return () => {
    latest += 1;
    const own = latest;
    return () => own === latest;
  };
}

/** Work for content that nobody sees, which may be a part of a tab's or of a fold's, waits until that is shown. */
export function whileShown(content: HTMLElement, action: () => unknown): () => void {
  let isDue = false;
  const act = () => {
    isDue = !content.checkVisibility();
    if (!isDue) action();
  };
  document.addEventListener("shown", () => {
    if (isDue) act();
  });
  return act;
}
