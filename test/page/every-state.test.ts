import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { casesOf } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { featuresOf, openScenario, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

const AXE = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const TABS = [
  "Plan",
  "Parts",
  "Wires",
  "Hear them all",
  "Blind test",
  "A against B",
  "Rewire",
  "Solder",
  "Measure",
  "Which part?",
  "Send it",
];

interface Finding {
  readonly id: string;
  readonly impact: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** Findings of axe-core within a part of the page that keep somebody from using it. */
async function seriousFindings(page: Page, within: string): Promise<string[]> {
  // Of what passes, only the rules are counted.
  const run = `axe.run(${JSON.stringify(within)}, { resultTypes: ["violations"] })`;
  const { passes, violations } = (await page.evaluate(run)) as { passes: Finding[]; violations: Finding[] };
  expect(passes.length, `rules that axe could apply to ${within}`).toBeGreaterThan(5);
  return violations
    .filter(({ impact }) => impact === "serious" || impact === "critical")
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(" | ")}`);
}

/** Axe has to run in the page; it is put there by the debugger, which the content security policy does not bind. */
async function bringAxe(page: Page): Promise<void> {
  await page.evaluate(AXE);
}

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
      // What differs between the two is colours and columns: a sample of the second shows either.
      for (const tab of width === 360 ? TABS : casesOf(TABS, 3)) {
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
      for (const tab of TABS) {
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

  it("asks nobody but its own service and complains of nothing, whatever example is opened", async () => {
    const visit = await site.stay();
    const { page } = visit;
    await whenReady(page);
    const options = page.getByLabel("Start from").locator("optgroup[label='Decisions'] option");
    await options.first().waitFor({ state: "attached" });
    const values = await options.evaluateAll((all) => all.map((each) => (each as HTMLOptionElement).value));
    expect(values.length).toBeGreaterThan(12);
    for (const value of casesOf(values, 5)) {
      await page.getByLabel("Start from").selectOption(value);
      expect(await featuresOf(page)).not.toMatch(/NaN|Infinity|undefined/);
      await page.locator(".found .findings, .found .all-well").waitFor();
    }
    expectQuiet(visit);
  });
});
