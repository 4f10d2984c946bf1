/** What a screen that is to stay on is told by. */
export type WakeState = "on" | "off" | "cannot";

/**
 * Keeps the screen on until it is told to let go. A browser lets go by itself whenever the page is hidden, so it is asked again
 * when the page is back.
 * @param tell hears at once and whenever it changes
 */
export function keepAwake(tell: (state: WakeState) => void): () => void {
  const { wakeLock } = navigator as { readonly wakeLock?: WakeLock };
  let lock: WakeLockSentinel | undefined;
  let isWanted = true;
  if (!wakeLock) {
    tell("cannot");
    return () => {};
  }
  const ask = async () => {
    if (!isWanted || document.visibilityState !== "visible" || (lock && !lock.released)) return;
    try {
      const got = await wakeLock.request("screen");
      if (!isWanted) return void got.release();
      lock = got;
      got.addEventListener("release", () => tell("off"));
      tell("on");
    } catch {
      // A low battery, or a browser that is told not to.
      tell("off");
    }
  };
  document.addEventListener("visibilitychange", ask);
  void ask();
  return () => {
    isWanted = false;
    document.removeEventListener("visibilitychange", ask);
    void lock?.release();
  };
}
