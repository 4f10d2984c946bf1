import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { presetGuard } from "../fixtures/harness.ts";
import { describeWith } from "../tools.ts";
import { draftOf, settled, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";

const WIDTHS = [360, 390, 768, 1440];

/** A guard with a resistor by hand that has no place under another pickup. */
function byHand() {
  const guard = presetGuard("hss-push-pull-split");
  const { parts, wires } = guard;
  return {
    ...guard,
    parts: { ...parts, extra: { kind: "resistor", resistance: "1M" } },
    wires: [...wires, ["extra.a", "bridge.slug.start"], ["extra.b", "volume.case"]],
  };
}

async function overflow(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
}

describeWith("chromium", "the plan and the guard in hand", () => {
  const site = usePage();

  for (const width of WIDTHS)
    for (const colorScheme of ["light", "dark"] as const)
      it(`have no serious finding of axe and keep to the page, edits, reasons and a question in sight, ${width} px, ${colorScheme}`, async () => {
        const visit = await site.stay({ width, colorScheme });
        const { page } = visit;
        await whenReady(page);
        const guard = byHand();
        const file = { name: "guard.json", mimeType: "application/json", buffer: Buffer.from(JSON.stringify(guard)) };
        await page.getByLabel("Open build file").setInputFiles(file);
        await expect.poll(async () => (await draftOf(page)).source).toEqual(guard);
        await settled(page);
        await bringAxe(page);
        await showTab(page, "Plan");
        await page.locator(".by-hand").waitFor();
        await page.locator(".plan-group").evaluateAll((all) => {
          for (const each of all) each.setAttribute("open", "");
        });
        await page.locator('[data-plan="pickups.bridge"]').selectOption("single-medium");
        await page.getByText("leaves no room for what was done by hand").waitFor();
        expect(await seriousFindings(page, "#panel-plan")).toEqual([]);
        expect(await overflow(page)).toBeLessThanOrEqual(0);
        await page.getByRole("button", { name: "Leave the guard as it is" }).click();
        await page.locator('[data-lug="volume.2"]').press("Enter");
        await page.locator(".would-fault").first().waitFor();
        expect(await seriousFindings(page, ".guard-panel")).toEqual([]);
        expect(await overflow(page)).toBeLessThanOrEqual(0);
        await page.keyboard.press("Escape");
        expectQuiet(visit);
      });
});
