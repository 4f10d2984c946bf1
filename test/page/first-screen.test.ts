import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { whenOpen, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

const THUMB_PIXELS = 44;

/** Sums what moves without anybody's doing (Layout Instability, W3C draft), from the page's first script on. */
async function noteShifts(page: Page): Promise<void> {
  await page.addInitScript(() => {
    const shifts = { sum: 0 };
    Object.assign(window, { shifts });
    new PerformanceObserver((list) => {
      for (const entry of list.getEntries() as (PerformanceEntry & { value: number; hadRecentInput: boolean })[])
        if (!entry.hadRecentInput) shifts.sum += entry.value;
    }).observe({ type: "layout-shift", buffered: true });
  });
}

describeWith("chromium", "the first screen", () => {
  const site = usePage();

  for (const [width, height] of [
    [1280, 900],
    [390, 844],
  ] as const) {
    it(`moves nothing that is seen while it loads, ${width} × ${height}`, async () => {
      const visit = await site.visit({ width, height, before: noteShifts, isThrifty: false });
      const { page } = visit;
      await whenOpen(page);
      await page.locator("option[value='sweep']").waitFor({ state: "attached" });
      const sum = await page.evaluate(() => (window as unknown as { shifts: { sum: number } }).shifts.sum);
      // "Good" is under 0.1; ours is half of that.
      expect(sum).toBeLessThanOrEqual(0.05);
      expectQuiet(visit);
    });
  }

  it("of a phone has position, dials, play and the curve, for thumbs", async () => {
    const { page } = await site.visit({ width: 390, height: 844 });
    await whenOpen(page);
    const shown = [
      page.locator(".plot canvas").first(),
      page.locator(".readout"),
      page.locator(".controls fieldset").first(),
      ...(await page.locator(".controls .dial").all()),
      page.getByRole("button", { name: "Play this setting" }),
    ];
    expect(shown.length).toBeGreaterThan(5);
    for (const each of shown) {
      const box = (await each.boundingBox())!;
      expect(box.x).toBeGreaterThanOrEqual(0);
      expect(box.x + box.width).toBeLessThanOrEqual(390);
      expect(box.y + box.height).toBeLessThanOrEqual(844);
    }
    const forThumbs = ".controls .choice span, .controls .dial input, .play, .fold > summary";
    const heights = await page
      .locator(forThumbs)
      .evaluateAll((all) =>
        all.filter((each) => each.checkVisibility()).map((each) => each.getBoundingClientRect().height),
      );
    expect(heights.length).toBeGreaterThan(8);
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(THUMB_PIXELS);
    expect(await page.getByRole("button", { name: "Save build file" }).isVisible()).toBe(false);
    await page.locator(".fold > summary", { hasText: "Guard:" }).click();
    expect(await page.getByRole("button", { name: "Save build file" }).isVisible()).toBe(true);
  });

  thoroughly("shows the panel whose code cannot be loaded as such, with a way on", async () => {
    const { page } = await site.visit({
      before: async (blank) => {
        await blank.route("**/part-share-panel-*.js", (route) => route.abort());
      },
    });
    await whenReady(page);
    await page.getByRole("tab", { name: "Send it" }).click();
    await page.getByText("This part of the page could not be loaded").waitFor();
    await page.unroute("**/part-share-panel-*.js");
    await page.getByRole("button", { name: "Load the page again" }).click();
    await whenReady(page);
    await page.getByRole("tab", { name: "Send it" }).click();
    await page.getByRole("button", { name: "Copy a link to this guard" }).waitFor();
  });
});
