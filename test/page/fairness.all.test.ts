import type { Page } from "playwright-core";
import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { openScenario, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";

async function beginTest(page: Page): Promise<void> {
  await whenReady(page);
  await openScenario(page, /HSS/);
  await showTab(page, "Blind test");
  const count = page.getByLabel("Trials, at least 10");
  await count.fill("3");
  await page.getByRole("button", { name: "Begin the blind test" }).click();
  const fault = page.locator(`#${await count.getAttribute("aria-describedby")}`);
  expect(await fault.textContent()).toContain("expected a whole number from 10 to 50");
  await count.fill("10");
  await page.getByRole("button", { name: "Begin the blind test" }).click();
  await page.getByText("Trial 1 of 10").waitFor();
}

describeWith("chromium", "the blind test", () => {
  const site = usePage();

  thoroughly("looks the same whichever side X is", async () => {
    const visit = await site.visit();
    const { page } = visit;
    // The lot decides nothing else on the page; fixed in turn, the two sides can be held against each other.
    const seen: string[] = [];
    for (const lot of [0, 1]) {
      await page.goto(site.origin);
      await page.evaluate((byte) => {
        crypto.getRandomValues = <T extends ArrayBufferView | null>(array: T): T => {
          (array as unknown as Uint8Array).fill(byte);
          return array;
        };
      }, lot);
      await beginTest(page);
      await page.getByRole("button", { name: "Play X" }).click();
      const shown = await page.locator("#panel-blind").innerHTML();
      // Numbers of elements are given in the order in which parts of the page happen to load.
      seen.push(shown.replaceAll(/-\d+(?=")/g, "-n"));
    }
    expect(seen[0]).toBe(seen[1]);
    expectQuiet(visit);
  });

  it("asks for at least ten trials, tells nothing on the way, and counts right answers", async () => {
    const { page } = await site.visit();
    await page.evaluate(() => {
      crypto.getRandomValues = <T extends ArrayBufferView | null>(array: T): T => {
        (array as unknown as Uint8Array).fill(1);
        return array;
      };
    });
    await beginTest(page);
    for (let trial = 1; trial <= 10; trial++) {
      await page.getByText(`Trial ${trial} of 10`).waitFor();
      expect(await page.locator("#panel-blind").textContent()).not.toMatch(/right|wrong/i);
      await page.getByRole("button", { name: trial === 10 ? "X is B" : "X is A" }).press("Enter");
    }
    const result = await page.locator(".blind-result").textContent();
    expect(result).toContain("9 of 10 right.");
    // 11/1024, the tail of ten fair coins.
    expect(result).toContain("at least 9 right in 1.1 % of such tests");
    expect(result).toContain("You can tell them apart.");
  });
});
