import type { Locator, Page } from "playwright-core";
import { expect, it } from "vitest";
import { encodeWav } from "../../src/audio/wav-encode.ts";
import { recordTake } from "../audio/string-levels/take.ts";
import { describeWith } from "../tools.ts";
import { openScenario, showTab, whenReady } from "./actions.ts";
import { bringAxe, seriousFindings } from "./axe.ts";
import { expectQuiet, usePage } from "./browser.ts";

async function openHeights(page: Page): Promise<Locator> {
  await whenReady(page);
  await openScenario(page, /22 nF or 47/);
  await showTab(page, "Heights");
  return page.locator("#panel-heights");
}

/** A group of fields by its legend. */
const group = (panel: Locator, legend: RegExp) =>
  panel.locator("fieldset", { has: panel.page().locator("legend", { hasText: legend }) });

async function fillPickups(panel: Locator, pitch: string): Promise<void> {
  for (const name of [/^Neck/, /^Bridge/]) {
    const fields = group(panel, name);
    await fields.getByLabel("Bass gap, mm").fill("2.4");
    await fields.getByLabel("Treble gap, mm").fill("2.4");
    await fields.getByLabel("One turn travels, mm").fill(pitch);
    await fields.getByLabel("Least gap wanted, mm").fill("1");
  }
  const second = group(panel, /second height/);
  for (const side of ["bass", "treble"])
    for (const name of [/^Neck/, /^Bridge/])
      await second.getByLabel(new RegExp(`${name.source}, ${side} gap`)).fill("3.6");
}

async function fillLevels(panel: Locator, lower: number): Promise<void> {
  const sets = [group(panel, /heights as they are/), group(panel, /second height/)];
  for (const [set, fields] of sets.entries()) {
    const levels = (db: number) =>
      Array(6)
        .fill((db - set * lower).toFixed(1))
        .join(" ");
    await fields.getByLabel("Position 1: dB from string 1").fill(levels(-20));
    await fields.getByLabel("Position 5: dB from string 1").fill(levels(-17));
  }
}

describeWith("chromium", "heights", () => {
  const site = usePage();

  it("tells the turns that bring the neck to the bridge's level, large and as a picture, and keeps what was typed", async () => {
    const visit = await site.stay();
    const { page } = visit;
    const panel = await openHeights(page);
    await fillPickups(panel, "0.8");
    await fillLevels(panel, 6);
    await panel.getByLabel("As loud as").selectOption({ label: "position 1" });
    await panel.getByRole("button", { name: "Work out the turns" }).click();
    const neck = panel.locator(".pickup-turns").first();
    await neck.waitFor();
    // 3 of 6 dB that 2.4 to 3.6 mm take: 2.4·√1.5 mm, 0.67 turns of 0.8 mm lower.
    const turns = await neck.locator(".screw-turn").allTextContents();
    for (const text of turns)
      expect(text).toMatch(/^(Five eighths of a turn|Three quarters of a turn) down, counter-clockwise$/);
    expect(await neck.getByRole("img").getAttribute("aria-label")).toMatch(/from above: Bass screw: .* down/);
    expect(await neck.locator(".turn-arrow").count()).toBe(2);
    expect(await panel.locator(".pickup-turns").nth(1).locator(".screw-turn").allTextContents()).toEqual([
      "stays",
      "stays",
    ]);
    const rows = panel.locator("table tbody tr");
    expect(await rows.count()).toBe(2);
    expect(await rows.nth(1).textContent()).toMatch(/Position 5.*\+3\.0 dB/);

    await showTab(page, "Parts");
    await showTab(page, "Heights");
    expect(await group(panel, /^Neck/).getByLabel("Bass gap, mm").inputValue()).toBe("2.4");
    expect(await neck.isVisible()).toBe(true);
    expectQuiet(visit);
  });

  it("says what cannot be told beside the field that it is about", async () => {
    const { page } = await site.stay();
    const panel = await openHeights(page);
    await fillPickups(panel, "0.8");
    await fillLevels(panel, 6);
    const bass = group(panel, /^Neck/).getByLabel("Bass gap, mm");
    await bass.fill("none");
    await panel.getByRole("button", { name: "Work out the turns" }).click();
    await expect.poll(() => bass.getAttribute("aria-invalid")).toBe("true");
    await bass.fill("2.4");
    const row = group(panel, /second height/).getByLabel("Position 5: dB from string 1");
    await row.fill("-20 -20 -20");
    await panel.getByRole("button", { name: "Work out the turns" }).click();
    await panel.getByText("has 3 levels; expected 6, one a string").waitFor();
    expect(await row.getAttribute("aria-invalid")).toBe("true");
    await row.fill("-20 -20 x -20 -20 -20");
    await bass.fill("-2");
    await panel.getByRole("button", { name: "Work out the turns" }).click();
    await panel.getByText("expected a number of dB, such as -20.5").waitFor();
    await panel.getByText('"-2mm" is -0.002 metres; expected more than 0').waitFor();
    await bass.fill("2.4");
    await row.fill("");
    await group(panel, /second height/)
      .getByLabel("Position 1: dB from string 1")
      .fill("");
    await panel.getByRole("button", { name: "Work out the turns" }).click();
    await panel.getByText(/Recorded at one height/).waitFor();
    expect(await panel.locator(".pickup-turns").count()).toBe(0);
  });

  it("reads the levels of a recording, and says why one cannot be read", async () => {
    const { page } = await site.stay();
    const panel = await openHeights(page);
    const now = group(panel, /heights as they are/);
    const row = now.locator(".level-row").nth(1);
    const give = (name: string, strings?: readonly number[]) =>
      row.locator("input[type='file']").setInputFiles({
        name,
        mimeType: "audio/wav",
        buffer: Buffer.from(encodeWav(recordTake(strings ? { strings } : {}), "pcm16")),
      });
    await give("whole.wav");
    await row.getByText("whole.wav: 6 strings read.").waitFor();
    const typed = await row.getByLabel("Position 2: dB from string 1").inputValue();
    expect(typed).toMatch(/^(-3\d\.\d ){5}-3\d\.\d$/);
    await give("half.wav", [6, 5, 4]);
    await row.getByText(/half\.wav: 3 plucks were found .*damp each string/).waitFor();
  });

  it("tells what changes for the player beside the guard kept as B", async () => {
    const { page } = await site.stay();
    const panel = await openHeights(page);
    await panel.getByText(/^Position 5: the .* works there as before\./).waitFor();
    expect(await panel.getByText(/^Position \d will be/).count()).toBe(5);
    expect(await panel.getByText(/leave the heights as they are/).count()).toBe(1);
  });

  it("tells it at once where the tab is opened for the first time, and what B became meanwhile in another tab", async () => {
    const { page } = await site.visit();
    await whenReady(page);
    await openScenario(page, /22 nF or 47/);
    await showTab(page, "Heights");
    const habits = page.locator("#panel-heights section").last();
    await habits.getByText(/^Position 5: the .* works there as before\./).waitFor();
    await showTab(page, "A against B");
    await page.getByRole("button", { name: "Drop B" }).click();
    await showTab(page, "Heights");
    await habits.getByText(/^Keep the guard that is in the guitar now as B/).waitFor();
  });

  it("fits a phone, in the dark, without barriers", async () => {
    const { page } = await site.stay({ width: 390, height: 844, colorScheme: "dark" });
    const panel = await openHeights(page);
    await fillPickups(panel, "");
    await fillLevels(panel, 6);
    await panel.getByRole("button", { name: "Work out the turns" }).click();
    await panel
      .getByText(/Count ten turns of it/)
      .first()
      .waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
    await bringAxe(page);
    expect(await seriousFindings(page, "#panel-heights")).toEqual([]);
  });
});
