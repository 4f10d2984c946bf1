/** Runs an action once things have been quiet for a while, however often it is asked for meanwhile. */
export function later(waitMs: number, action: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return () => {
    clearTimeout(timer);
    timer = setTimeout(action, waitMs);
  };
}

/** Work for content that nobody sees waits until its tab is shown. */
export function whileShown(content: HTMLElement, action: () => void): () => void {
  let isDue = false;
  const act = () => {
    isDue = content.offsetParent === null;
    if (!isDue) action();
  };
  content.addEventListener("shown", () => {
    if (isDue) act();
  });
  return act;
}
