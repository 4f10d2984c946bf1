import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { settled, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";
import { lastPlayed, noteSounds, playedCount } from "./played.ts";

describeWith("chromium", "the choices of how a phrase is played", () => {
  const site = usePage();

  it("change what sounds at once, and stand aside for a test signal, on a telephone too", async () => {
    const visit = await site.visit({ before: noteSounds, isThrifty: false });
    const { page } = visit;
    await page.setViewportSize({ width: 390, height: 844 });
    await whenReady(page);
    await page.getByText("What is played, and how").click();
    const [hand, strings] = [page.getByLabel("Hand", { exact: true }), page.getByLabel("Strings", { exact: true })];
    await expect.poll(() => hand.locator("option").allTextContents()).toHaveLength(3);
    expect(await strings.locator("option").allTextContents()).toEqual(["New", "Used", "Old"]);
    expect(await strings.inputValue()).toBe("used");
    const words = page.locator(".chosen-words");
    expect(await words.textContent()).toMatch(/^Open E and A major chords.*; a plectrum's rounded tip/);
    expect(await words.isVisible()).toBe(true);
    await settled(page);
    await page.getByRole("button", { name: "Play this setting" }).click();
    await expect.poll(() => playedCount(page)).toBe(1);
    const usual = await lastPlayed(page);
    await hand.selectOption("bright");
    await expect.poll(() => playedCount(page)).toBe(2);
    const bright = await lastPlayed(page);
    expect(await words.textContent()).toContain("a plectrum's hard edge near the bridge");
    expect(bright.samples.length).toBe(usual.samples.length);
    const differences = bright.samples.map((sample, n) => Math.abs(sample - usual.samples[n]!));
    expect(Math.max(...differences.slice(0, 48_000))).toBeGreaterThan(0.01);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);

    await page.getByLabel("Phrase").selectOption("noise");
    await expect.poll(() => hand.isDisabled()).toBe(true);
    expect(await strings.isDisabled()).toBe(true);
    expect(await words.textContent()).not.toContain("plectrum");
    expectQuiet(visit);
  });
});
