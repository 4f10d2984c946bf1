import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { featuresOf, openScenario, showTab, whenReady } from "./actions.ts";
import { usePage } from "./browser.ts";

describeWith("chromium", "the keyboard alone", () => {
  const site = usePage();

  it("chooses a position, turns a knob, reads the curve, walks along tabs and cells", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    await openScenario(page, /HSS/);
    const lever = page.locator(".controls fieldset").first();
    await lever.getByRole("radio", { name: "1" }).focus();
    await page.keyboard.press("ArrowRight");
    expect(await lever.getByRole("radio", { name: "2" }).isChecked()).toBe(true);

    await page.getByRole("slider", { name: "Tone: bridge" }).focus();
    const before = await featuresOf(page);
    await page.keyboard.press("Home");
    await expect.poll(() => featuresOf(page)).not.toBe(before);

    await page.locator(".plot").focus();
    await page.keyboard.press("ArrowRight");
    const readout = page.locator(".readout b");
    const first = await readout.textContent();
    expect(first).toMatch(/Hz/);
    await page.keyboard.press("PageUp");
    expect(await readout.textContent()).not.toBe(first);

    await page.getByRole("tab", { name: "Parts" }).focus();
    await page.keyboard.press("ArrowRight");
    await page.keyboard.press("ArrowRight");
    expect(await page.getByRole("tab", { selected: true }).textContent()).toBe("Hear them all");
    await page.getByRole("button", { name: "Play position 2, tone 5" }).focus();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.press("ArrowLeft");
    expect(await page.evaluate(() => document.activeElement?.getAttribute("aria-label"))).toBe(
      "Play position 3, tone 4",
    );
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "Stop" }).waitFor();
    expect(await lever.getByRole("radio", { name: "3" }).isChecked()).toBe(true);
    expect(await page.getByRole("button", { name: "Play position 3, tone 4" }).getAttribute("aria-pressed")).toBe(
      "true",
    );
  });

  thoroughly("reaches every control in reading order, the way past the head first", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe("Skip to the guard");
    await showTab(page, "Parts");
    const tops: number[] = [];
    await page.locator(".name").focus();
    for (let step = 0; step < 12; step++) {
      await page.keyboard.press("Tab");
      tops.push(
        await page.evaluate(() => (document.activeElement as HTMLElement).getBoundingClientRect().top + scrollY),
      );
    }
    // Never back up by more than the height of a row.
    for (const [index, top] of tops.slice(1).entries()) expect(top).toBeGreaterThan(tops[index]! - 60);
  });
});
