import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { usePage } from "./browser.ts";

describeWith("chromium", "the swap card", () => {
  const site = usePage();

  it("of the guard kept as B and the one on the bench: cautions first, then what to do and to tell the player", async () => {
    const { page } = await site.visit({ width: 360, height: 800 });
    await whenReady(page);
    // The first example comes with another guard as B.
    await showTab(page, "Swap card");
    const form = page.locator(".swap-panel");
    expect(await form.getByLabel("Comes out").inputValue()).toBe("b");
    expect(await form.getByLabel("Goes in").inputValue()).toBe("bench");
    await form.getByLabel("Which guitar").fill("the blue one");
    await form.getByLabel("The jack is").selectOption("along");
    await form.getByRole("button", { name: "Write the card" }).click();
    const card = page.getByRole("article", { name: "The swap card" });
    await card.waitFor({ timeout: 60_000 });
    expect(await card.locator("li").first().textContent()).toMatch(/^Unplug the guitar from the amplifier/);
    expect(await card.textContent()).toContain("Guitar: the blue one");
    expect(await card.textContent()).toContain("Unscrew the jack and let it come along with the guard.");
    expect(await card.getByRole("table", { name: "Where each sound is now" }).getByRole("row").count()).toBeGreaterThan(
      3,
    );
    await bringAxe(page);
    expect(await seriousFindings(page, ".swap-panel")).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBe(0);
    await page.emulateMedia({ media: "print" });
    expect(await form.getByLabel("Comes out").isVisible()).toBe(false);
    expect(await card.isVisible()).toBe(true);
    expect(await page.locator(".guard-panel").isVisible()).toBe(false);
  });
});
