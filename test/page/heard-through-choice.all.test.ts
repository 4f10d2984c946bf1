import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { settled, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";
import { lastPlayed, noteSounds, playedCount } from "./played.ts";

describeWith("chromium", "what the guard is heard through", () => {
  const site = usePage();

  it("changes what sounds, says what it is and to begin quietly, and is there again after a reload", async () => {
    const visit = await site.visit({ before: noteSounds });
    const { page } = visit;
    await whenReady(page);
    const through = page.getByLabel("Heard through");
    expect(await through.inputValue()).toBe("jack");
    expect(await page.getByRole("slider", { name: "Drive" }).count()).toBe(0);
    await page.locator("option[value='sweep']").waitFor({ state: "attached" });
    await page.getByLabel("Phrase").selectOption("click");
    await settled(page);
    await page.getByRole("button", { name: "Play this setting" }).click();
    await expect.poll(() => playedCount(page)).toBe(1);
    const jack = await lastPlayed(page);

    await through.selectOption("clean");
    await expect.poll(() => playedCount(page)).toBe(2);
    const clean = await lastPlayed(page);
    // The speaker rings on after the guard has died away.
    expect(clean.samples.length).toBeGreaterThan(jack.samples.length + 500);
    await page.getByRole("slider", { name: "Drive" }).fill("8");
    await expect.poll(() => playedCount(page)).toBeGreaterThan(2);
    const words = page.locator(".chain-fields");
    expect(await words.textContent()).toContain("Begin at a low volume");
    await page.getByText("What amplifier and speaker are").click();
    expect(await words.textContent()).toContain("common practice");
    await page.getByRole("button", { name: "Stop" }).click();

    await page.reload();
    await whenReady(page);
    expect(await through.inputValue()).toBe("clean");
    expect(await page.getByRole("slider", { name: "Drive" }).inputValue()).toBe("8");
    expectQuiet(visit);
  });
});
