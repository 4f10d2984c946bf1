import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { casesOf } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { featuresOf, openScenario, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";
import { TABS } from "./tabs.ts";

async function openAllDetails(page: Page): Promise<void> {
  await page.evaluate(() => {
    for (const details of document.querySelectorAll("details")) details.open = true;
  });
}

async function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
}

async function prepare(page: Page): Promise<void> {
  await whenReady(page);
  await openScenario(page, /HSS/);
  await page.locator(".finding").first().waitFor();
}

describeWith("chromium", "every state of the page", () => {
  const site = usePage();

  for (const [width, colorScheme] of [
    [360, "light"],
    [1600, "dark"],
  ] as const) {
    it(`has no serious finding of axe and no complaint, ${width} px wide, ${colorScheme}`, async () => {
      const visit = await site.stay({ width, colorScheme });
      const { page } = visit;
      await prepare(page);
      await bringAxe(page);
      await openAllDetails(page);
      expect(await seriousFindings(page, "html")).toEqual([]);
      for (const tab of casesOf(TABS, 4)) {
        await showTab(page, tab);
        await openAllDetails(page);
        expect(await seriousFindings(page, ".tab-panel:not([hidden])"), tab).toEqual([]);
      }
      expectQuiet(visit);
    });
  }

  it("never scrolls sideways, 360, 900 and 1600 px wide", async () => {
    const { page } = await site.stay();
    await prepare(page);
    for (const width of [360, 900, 1600]) {
      await page.setViewportSize({ width, height: 900 });
      // What is cut off is cut off on the narrowest page first.
      for (const tab of width === 360 ? TABS : casesOf(TABS, 3)) {
        await showTab(page, tab);
        await openAllDetails(page);
        expect(await overflow(page), `${tab} at ${width} px`).toBeLessThanOrEqual(0);
        const cut = await page
          .locator(".tab-panel:not([hidden]) .table-frame")
          .evaluateAll((frames) => frames.filter((each) => each.scrollWidth > each.clientWidth + 1).length);
        expect(cut, `tables cut off in ${tab} at ${width} px`).toBe(0);
      }
    }
  });

  it("has no control that a thumb would miss, 390 px wide", async () => {
    const { page } = await site.stay({ width: 390, height: 844 });
    await prepare(page);
    for (const tab of casesOf(TABS, 4)) {
      await showTab(page, tab);
      await openAllDetails(page);
      const missed = await page.locator("button, select, textarea, summary, input").evaluateAll((all) =>
        all
          .map((each) => ({ each, target: each.closest("label") ?? each }))
          .map(({ each, target }) => ({
            text: each.outerHTML.slice(0, 100),
            ...target.getBoundingClientRect().toJSON(),
          }))
          .filter(({ height }) => height > 0 && height < 43.5)
          .map(({ text, height }) => `${Math.round(height)} px: ${text}`),
      );
      expect(missed, tab).toEqual([]);
    }
  });

  it("asks nobody but its own service and complains of nothing, whatever example is opened", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    const options = page.getByLabel("Start from").locator("optgroup[label='Decisions'] option");
    await options.first().waitFor({ state: "attached" });
    const values = await options.evaluateAll((all) => all.map((each) => (each as HTMLOptionElement).value));
    expect(values.length).toBeGreaterThan(12);
    for (const value of casesOf(values, 3)) {
      await page.getByLabel("Start from").selectOption(value);
      expect(await featuresOf(page)).not.toMatch(/NaN|Infinity|undefined/);
      await page.locator(".found .findings, .found .all-well").waitFor();
    }
    expectQuiet(visit);
  });
});
