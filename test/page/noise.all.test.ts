import { expect, it } from "vitest";
import { describeWith } from "../tools.ts";
import { choosePosition, openScenario, settled, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";
import { lastPlayed, noteSounds, playedCount } from "./played.ts";

const rms = (samples: Float32Array) => Math.sqrt(samples.reduce((sum, value) => sum + value ** 2, 0) / samples.length);

describeWith("chromium", "hum and hiss on a telephone", () => {
  const site = usePage();

  it("are heard where they are wished for, and told of every position with what would help", async () => {
    const visit = await site.visit({ before: noteSounds, width: 390, height: 844 });
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    await choosePosition(page, 5);
    await page.getByText("What is played, and how").click();
    await page.locator("option[value='pluck']").waitFor({ state: "attached" });
    await page.getByLabel("Phrase").selectOption("pluck");
    await settled(page);
    await page.getByRole("button", { name: "Play this setting" }).click();
    await expect.poll(() => playedCount(page)).toBe(1);
    const clean = await lastPlayed(page);
    const noise = page.getByRole("group", { name: "Hum and hiss" });
    await noise.getByRole("radio", { name: "off" }).focus();
    await page.keyboard.press("ArrowRight");
    await expect.poll(() => playedCount(page)).toBe(2);
    const { samples } = await lastPlayed(page);
    await page.getByRole("button", { name: "Stop" }).click();
    // Before the pluck there is nothing else; 42 dB under a strum it is plain.
    expect(rms(clean.samples.subarray(500, 2000))).toBeLessThan(1e-6);
    expect(rms(samples.subarray(500, 2000))).toBeGreaterThan(1e-4);

    await showTab(page, "Will it fit?");
    await page.getByText("Hum and hiss of this guard").click();
    const table = page.getByRole("table", { name: /^Hum and hiss beside a strummed chord/ });
    await table.waitFor();
    expect(await table.getByRole("row").count()).toBe(6);
    const section = page.getByRole("region", { name: "Hum and hiss" });
    expect(await section.locator(".room-told").textContent()).toMatch(/^Most hum is in position \d: \d\d dB under/);
    const bridge = page.getByRole("table", { name: /^What would help/ }).getByRole("row", { name: /^1: / });
    expect(await bridge.textContent()).toMatch(/−\d+ dB, under the hiss already/);
    const before = await table.textContent();
    await section.getByRole("radio", { name: "beside an amplifier" }).check();
    await expect.poll(() => table.textContent()).not.toBe(before);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await bringAxe(page);
    expect(await seriousFindings(page, ".noise-fold")).toEqual([]);
    expectQuiet(visit);
  });
});
