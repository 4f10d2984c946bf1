import { expect, it } from "vitest";
import { describeWith } from "../../tools.ts";
import { showTab, whenOpen } from "../actions.ts";
import { bringAxe, seriousFindings } from "../axe.ts";
import { expectQuiet, usePage } from "../browser.ts";
import { lastPlayed, noteSounds, playedCount } from "../played.ts";
import { openShelf } from "../shelf/shelf-page.ts";
import { openCells, putThree } from "./cells-page.ts";

const rmsOf = (samples: Float32Array) => Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length);

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

    const names = await cells.allTextContents();

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
    await page.reload();
    await whenOpen(page);
    const again = await openShelf(page);
    await showTab(page, "Listening board");
    const back = again.locator(".board-cell");
    await expect.poll(() => back.count()).toBe(3);
    expect(await back.allTextContents()).toEqual(names);
    expectQuiet(visit);
  });
});
