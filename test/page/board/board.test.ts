import type { Locator } from "playwright-core";
import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { bringAxe, seriousFindings } from "../axe.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { lastPlayed, noteSounds, playedCount } from "../played.ts";
import { openCells } from "./cells-page.ts";

const rmsOf = (samples: Float32Array) => Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);

async function putThree(shelf: Locator): Promise<Locator> {
  const put = shelf.getByRole("button", { name: "Put on the board" });
  await shelf.getByLabel("Guard", { exact: true }).selectOption({ label: "Usual" });
  await put.click();
  await shelf.getByLabel("Lever", { exact: true }).selectOption("5");
  await put.click();
  await shelf.getByLabel("Guard", { exact: true }).selectOption({ label: "Long cable" });
  await put.click();
  const cells = shelf.locator(".board-cell");
  await expect.poll(() => cells.count()).toBe(3);
  return cells;
}

describeWith("chromium", "the listening board", () => {
  const site = usePage();

  it("plays three cells of two guards by key, equally loud, and tells their figures", async () => {
    const visit = await site.visit({ before: noteSounds });
    const { page } = visit;
    const shelf = await openCells(page, "Listening board");
    const cells = await putThree(shelf);
    const table = shelf.getByRole("table");
    await expect.poll(() => table.textContent()).not.toContain("…");
    expect(await cells.allTextContents()).toEqual([
      expect.stringContaining("Usual, position 1"),
      expect.stringContaining("Usual, position 5"),
      expect.stringContaining("Long cable, position 1"),
    ]);
    const peaks = await table.locator("td[data-column=Peak]").allTextContents();
    expect(Number.parseFloat(peaks[2]!)).toBeLessThan(Number.parseFloat(peaks[0]!));

    const levels: number[] = [];
    for (const [index, key] of ["1", "2", "3"].entries()) {
      if (index === 0) await cells.first().focus();
      await page.keyboard.press(key);
      await expect.poll(() => playedCount(page)).toBe(index + 1);
      expect(await cells.evaluateAll((all) => all.map((each) => each.getAttribute("aria-pressed")))).toEqual(
        [0, 1, 2].map((at) => String(at === index)),
      );
      levels.push(rmsOf((await lastPlayed(page)).samples));
    }
    // Matched by K-weighted loudness; plain power differs by what that weighs less.
    for (const level of levels) expect(level / levels[0]!).toBeGreaterThan(0.7);
    for (const level of levels) expect(level / levels[0]!).toBeLessThan(1.4);
    await page.keyboard.press("ArrowDown");
    expect(await cells.first().getAttribute("aria-pressed")).toBe("true");
    await page.keyboard.press("Escape");
    expect(await shelf.locator(".board-cell[aria-pressed=true]").count()).toBe(0);

    await bringAxe(page);
    expect(await seriousFindings(page, "#panel-board")).toEqual([]);
    expectQuiet(visit);
  });

  it("has one of them named blind, and says what the answers come to", async () => {
    const { page } = await site.visit({
      before: async (blank) => {
        await blank.addInitScript(() => {
          // The lot falls on the second of three, every time.
          crypto.getRandomValues = ((array: Uint8Array) => array.fill(1)) as never;
        });
      },
    });
    const shelf = await openCells(page, "Listening board");
    await putThree(shelf);
    await shelf.getByText("Blind: name which is playing").click();
    await shelf.getByRole("button", { name: "Begin the blind test" }).click();
    const panel = shelf.locator(".blind");
    await panel.getByText("Trial 1: which one is X?").waitFor();
    await panel.getByRole("button", { name: "Play X" }).click();
    // ln 20 over ln((2/3)/(1/3)) is 4.3: five right ones in a row are enough.
    for (let trial = 0; trial < 5; trial++) {
      expect(await panel.textContent()).not.toContain("right");
      await panel.getByRole("button", { name: /^X is 2/ }).click();
    }
    await panel.getByText("5 of 5 right, 3 sounds to choose from.").waitFor();
    expect(await panel.textContent()).toContain("You can tell them apart, some of them at least");
  });
});
