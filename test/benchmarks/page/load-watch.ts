import type { Page } from "playwright-core";

/** A page's loading as the browser itself tells it; times in ms from the navigation. */
export interface Loading {
  readonly firstPaintMs: number;
  readonly largestPaintMs: number;
  /** What long tasks took beyond 50 ms each, summed. */
  readonly blockedMs: number;
  /** Sum of all layout shifts that no input brought about. */
  readonly layoutShift: number;
}

declare global {
  var loadWatch: { readonly loading: Loading; quietForMs(): number };
}

/** Runs in the browser, before anything of the page. */
export function watchLoading(): void {
  const loading = { firstPaintMs: Number.NaN, largestPaintMs: Number.NaN, blockedMs: 0, layoutShift: 0 };
  let lastAt = Number.POSITIVE_INFINITY;
  const watch = (type: string, take: (entry: PerformanceEntry) => void) =>
    new PerformanceObserver((list) => {
      list.getEntries().forEach(take);
      if (Number.isFinite(lastAt)) lastAt = performance.now();
    }).observe({ type, buffered: true });
  watch("paint", ({ name, startTime }) => {
    if (name === "first-contentful-paint") loading.firstPaintMs = startTime;
  });
  watch("largest-contentful-paint", ({ startTime }) => {
    loading.largestPaintMs = startTime;
  });
  watch("longtask", ({ duration }) => {
    loading.blockedMs += duration - 50;
  });
  watch("layout-shift", (entry) => {
    const { value, hadRecentInput } = entry as PerformanceEntry & { value: number; hadRecentInput: boolean };
    if (!hadRecentInput) loading.layoutShift += value;
  });
  watch("resource", () => undefined);
  addEventListener("load", () => {
    lastAt = performance.now();
  });
  globalThis.loadWatch = { loading, quietForMs: () => performance.now() - lastAt };
}

/** Waits until nothing was fetched, painted anew, shifted or long computed for a while. */
export async function whenQuiet(page: Page, quietMs: number): Promise<void> {
  await page.waitForFunction((ms) => loadWatch.quietForMs() >= ms, quietMs, { polling: 200, timeout: 120_000 });
}
