/** Does something when the browser has nothing better to do, within two seconds at most. */
export function whenIdle(action: () => void): void {
  if ("requestIdleCallback" in window) requestIdleCallback(action, { timeout: 2000 });
  else setTimeout(action, 200);
}
