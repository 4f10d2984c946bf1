import { expect, it } from "vitest";
import { thoroughly } from "../effort.ts";
import { describeWith } from "../tools.ts";
import { choosePosition, featuresOf, openScenario, showTab, whenReady } from "./actions.ts";
import { expectQuiet, usePage } from "./browser.ts";
import { lastPlayed, noteSounds, playedCount } from "./played.ts";
import { levelsAt, peakOf } from "./wav-spectrum.ts";

describeWith("chromium", "a newcomer's path through the page", () => {
  const site = usePage();

  it("chooses a guard, changes a cap, hears it, tests their ears, and sends a friend the link", async () => {
    const visit = await site.visit({ before: noteSounds, isThrifty: false });
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    await showTab(page, "Parts");

    await page.getByRole("slider", { name: "Tone: bridge" }).fill("0");
    const before = await featuresOf(page);
    const cap = page.locator('[data-path="parts.cap2.capacitance"]');
    await cap.fill("47n");
    await expect.poll(() => cap.locator("xpath=../span").textContent()).toBe("= 47 nF");
    await cap.press("Enter");
    await expect.poll(() => featuresOf(page)).not.toBe(before);
    await page.getByRole("slider", { name: "Tone: bridge" }).fill("10");

    await choosePosition(page, 2);
    await page.getByRole("button", { name: "Play this setting" }).click();
    await page.getByRole("button", { name: "Stop" }).waitFor();
    expect(peakOf((await lastPlayed(page)).samples)).toBeGreaterThan(0.01);
    await page.getByRole("button", { name: "Stop" }).click();

    await showTab(page, "Blind test");
    await page.getByLabel("Trials, at least 10").fill("10");
    await page.getByRole("button", { name: "Begin the blind test" }).click();
    for (let trial = 1; trial <= 10; trial++) {
      await page.getByText(`Trial ${trial} of 10`).waitFor();
      await page.getByRole("button", { name: "Play X" }).click();
      await page.getByRole("button", { name: "X is A" }).click();
    }
    const result = await page.locator(".blind-result").textContent();
    expect(result).toMatch(
      /^\d+ of 10 right\.Somebody who only guesses gets at least \d+ right in (more than )?[\d.]+ % of such tests\./,
    );

    await showTab(page, "Send it");
    await page.getByRole("button", { name: "Copy a link to this guard" }).click();
    const link = page.getByLabel("The link");
    await expect.poll(() => link.inputValue()).toContain("/b/");
    const url = new URL(await link.inputValue());
    expect(url.href.length).toBeLessThanOrEqual(1200);
    const features = await featuresOf(page);

    const friend = await site.visit({ path: url.pathname });
    await whenReady(friend.page);
    await showTab(friend.page, "Parts");
    expect(await featuresOf(friend.page)).toBe(features);
    expect(await friend.page.locator('[data-path="parts.cap2.capacitance"]').inputValue()).toBe("47n");
    expectQuiet(visit);
    expectQuiet(friend);
  });

  thoroughly("plays sound whose spectrum follows the curve, for a sweep through position 2", async () => {
    const visit = await site.visit({ before: noteSounds, isThrifty: false });
    const { page } = visit;
    await whenReady(page);
    await openScenario(page, /HSS/);
    await choosePosition(page, 2);
    await page.locator("option[value='sweep']").waitFor({ state: "attached" });
    await page.getByLabel("Phrase").selectOption("sweep");
    await page.getByLabel("Same loudness").uncheck();
    const played = async (tone: number) => {
      for (const name of ["Tone: neck and middle", "Tone: bridge"])
        await page.getByRole("slider", { name }).fill(String(tone));
      const before = await playedCount(page);
      await page.getByRole("button", { name: "Play this setting" }).click();
      await page.getByRole("button", { name: "Stop" }).click();
      await expect.poll(() => playedCount(page)).toBe(before + 1);
      return lastPlayed(page);
    };
    const probesHz = [200, 500, 1000, 2000, 4000];
    const [open, closed] = [levelsAt(await played(10), probesHz), levelsAt(await played(0), probesHz)];
    await page.getByRole("slider", { name: "Tone: bridge" }).focus();
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: "CSV", exact: true }).click(),
    ]);
    const csv = await (await download.createReadStream()).setEncoding("utf8").toArray();
    const rows = csv
      .join("")
      .split("\r\n")
      .map((line) => line.split(","));
    const header = rows[0]!;
    const column = (name: string) => header.indexOf(name);
    const curve = (name: string, hertz: number) => {
      const near = rows
        .slice(1)
        .reduce((best, row) =>
          Math.abs(Math.log(Number(row[0]) / hertz)) < Math.abs(Math.log(Number(best[0]) / hertz)) ? row : best,
        );
      return Number(near[column(name)]);
    };
    for (const [index, hertz] of probesHz.entries()) {
      const heard = open[index]! - closed[index]!;
      const drawn = curve("tone 10 (dB)", hertz) - curve("tone 0 (dB)", hertz);
      // The nearest point of the grid is up to 1/64 octave away, and a sweep's level is read over a third of an octave.
      expect(Math.abs(heard - drawn), `at ${hertz} Hz`).toBeLessThan(1);
    }
    expectQuiet(visit);
  });
});
