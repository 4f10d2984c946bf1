import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { draftOf, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { usePage } from "./browser.ts";

const PHONE = { width: 390, height: 844 };

describeWith("chromium", "a sound wanted", () => {
  const site = usePage();

  it("is said in words, shown as targets, changed without a word, and opened as a plan that can be undone", async () => {
    const { page } = await site.visit(PHONE);
    await whenReady(page);
    const before = (await draftOf(page)).source;
    await showTab(page, "Sound wanted");
    const panel = page.locator(".wanted-panel");
    await panel.getByLabel("What you want to hear").fill("glasy 4, hum-free 2");
    await panel.getByRole("button", { name: "Read it" }).click();
    await panel.getByText("“glasy” is not known here; did you mean “glassy”?").waitFor();
    await panel.getByRole("button", { name: "Add a place" }).click();
    const added = panel.locator("fieldset").nth(1);
    await added.getByLabel("Where").selectOption({ label: "Position 4" });
    await panel.locator("fieldset").nth(1).getByLabel("Add a word").selectOption("glassy");
    await panel.locator("summary", { hasText: "glassy" }).click();
    await panel.getByLabel("peak's height, at least, dB").fill("3");
    await panel.getByLabel("peak's height, at least, dB").blur();
    await expect.poll(() => panel.locator("summary", { hasText: "glassy" }).textContent()).toContain("at least 3 dB");

    await panel.getByLabel("Begin with").selectOption("own");
    await panel.getByLabel("Add switches to the best").uncheck();
    await panel.getByRole("button", { name: "Find guards" }).click();
    const found = panel.locator(".found-guard").first();
    await found.waitFor({ timeout: 60_000 });
    expect(await found.textContent()).toMatch(/volume 2?[05]+0 kΩ/);
    expect(await found.locator("tbody tr").count()).toBe(3);
    const low = await panel.locator("button, select, input:not([type=checkbox]), summary").evaluateAll((all) =>
      all.flatMap((each) => {
        const { height } = each.getBoundingClientRect();
        return each.checkVisibility() && height < 43.5 ? [`${each.textContent} ${height}`] : [];
      }),
    );
    expect(low).toEqual([]);
    await bringAxe(page);
    expect(await seriousFindings(page, ".wanted-panel")).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);

    await found.getByRole("button", { name: /^Put it on the bench/ }).click();
    await page.getByText("The guard is on the bench, as a plan.").waitFor();
    expect(JSON.stringify((await draftOf(page)).source)).not.toBe(JSON.stringify(before));
    await page.keyboard.press("Control+z");
    await expect.poll(async () => JSON.stringify((await draftOf(page)).source)).toBe(JSON.stringify(before));
  });
});
